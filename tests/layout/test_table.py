"""Tables: nothing outside its cell, rows whole, header on each page."""

from __future__ import annotations

import pytest

from asfitted.errors import DoesNotFitError
from asfitted.geometry import Point
from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Text
from asfitted.layout.table import Column, Table, fit_table, paginate, table_items

LONG = "a cable that is described at some length so that it has to break"
TABLE = Table(
    (Column("Way", wraps=False), Column("Circuit"), Column("Length", align="end", wraps=False)),
    tuple((f"{i}TP", LONG if i % 3 == 0 else "short", f"{i}.5 m") for i in range(1, 31)),
    tuple(f"{i}TP" for i in range(1, 31)),
)


def test_columns_fill_the_width_exactly() -> None:
    fitted = fit_table(TABLE, 100.0)
    assert sum(fitted.widths_mm) == pytest.approx(100.0, abs=0.5)


def test_no_line_of_text_leaves_its_cell() -> None:
    fitted = fit_table(TABLE, 90.0)
    items, box = table_items("t", fitted, range(30), Point(0, 0))
    edges = [0.0]
    for width in fitted.widths_mm:
        edges.append(edges[-1] + width)
    texts = [p for item in items for p in item.parts if isinstance(p, Text)]
    assert len(texts) > 90
    for text in texts:
        room = box_of(text)
        column = max(i for i, x in enumerate(edges[:-1]) if room.x0 >= x - 0.01)
        assert room.x1 <= edges[column + 1] + 0.01, text
        assert box.y0 <= room.y0
        assert room.y1 <= box.y1


def test_rows_are_never_split_and_all_come_once() -> None:
    fitted = fit_table(TABLE, 90.0)
    pages = paginate(fitted, 80.0, 80.0)
    assert len(pages) > 1
    assert [i for rows in pages for i in rows] == list(range(30))
    for rows in pages:
        assert fitted.header_mm + sum(fitted.row_mm[i] for i in rows) <= 80.0 + 1e-6


def test_a_word_wider_than_the_page_is_said() -> None:
    with pytest.raises(DoesNotFitError, match="longest words"):
        fit_table(TABLE, 30.0)


def test_a_row_higher_than_the_page_is_said() -> None:
    with pytest.raises(DoesNotFitError, match="row"):
        paginate(fit_table(TABLE, 60.0), 14.0, 14.0)
