"""A row higher than a page is parted and loses no word; any other table stays as it is."""

from __future__ import annotations

import pytest

from asfitted.layout.parted_rows import with_parted_rows
from asfitted.layout.table import Column, Table, fit_table, paginate

PAGE_MM = 120.0
TAGS = [f"W{n:03d}" for n in range(900)]
COLUMNS = (Column("Rule", wraps=False), Column("Finding"), Column("Where"))


def _table(words: str) -> Table:
    rows = (("A-1", "clear", "DB1"), ("B-2", "no limit known", words), ("C-3", "clear", "DB2"))
    return Table(COLUMNS, rows, ("a", "b", "c"), frozenset({1}), frozenset({2}))


def test_a_table_whose_rows_fit_stays_as_it_is() -> None:
    fitted = fit_table(_table("W001, W002"), 180.0)
    assert with_parted_rows(fitted, PAGE_MM) is fitted


@pytest.mark.parametrize("width_mm", [90.0, 180.0])
def test_every_word_of_a_high_row_stays_and_every_part_fits(width_mm: float) -> None:
    parted = with_parted_rows(fit_table(_table(", ".join(TAGS)), width_mm), PAGE_MM)
    pages = paginate(parted, PAGE_MM, PAGE_MM)
    assert [i for page in pages for i in page] == list(range(len(parted.row_mm)))
    told = " ".join(line for row in parted.cell_lines for line in row[2]).replace(",", "").split()
    assert told == ["DB1", *TAGS, "DB2"]
    assert " ".join(line for row in parted.cell_lines for line in row[1]).split() == (
        ["clear", "no", "limit", "known", "clear"]
    )


def test_parts_have_names_of_their_own_and_the_look_of_their_row() -> None:
    parted = with_parted_rows(fit_table(_table(", ".join(TAGS)), 90.0), PAGE_MM).table
    count = len(parted.rows)
    assert parted.row_idents[:2] == ("a", "b")
    assert parted.row_idents[-1] == "c"
    assert len(set(parted.row_idents)) == count
    assert parted.strong_rows == frozenset(range(1, count - 1))
    assert parted.tinted_rows == frozenset({count - 1})
