"""Tables beside views: rows go on from column to column, each in its place once."""

from __future__ import annotations

import pytest

from asfitted.errors import DoesNotFitError
from asfitted.layout.containment.shelf_flow import ShelfFlow
from asfitted.layout.table import Column, Table


def _flow(words: list[str]) -> ShelfFlow:
    flow = ShelfFlow("A4", 2)
    rows = tuple((str(i), text) for i, text in enumerate(words))
    columns = (Column("Piece", wraps=False), Column("Cables"))
    flow.add_table("pieces:T1", Table(columns, rows, tuple(f"row-{i}" for i in range(len(rows)))))
    flow.finish()
    return flow


@pytest.mark.parametrize("tags", [1, 30, 90, 130])
def test_every_row_is_placed_once_in_order_however_high(tags: int) -> None:
    words = " ".join(f"W{n:03d}-10" for n in range(tags))
    flow = _flow([words] * 8)
    placed = [i for table in flow.tables for i in table.rows]
    assert placed == list(range(8))
    for table in flow.tables:
        height = table.fitted.header_mm + sum(table.fitted.row_mm[i] for i in table.rows)
        assert table.slot.at.y + height <= flow.area.y1 + 1e-6


def test_a_row_higher_than_a_sheet_is_refused() -> None:
    with pytest.raises(DoesNotFitError, match="row 1 of pieces:T1"):
        _flow([" ".join(f"W{n:04d}-10" for n in range(2000))])
