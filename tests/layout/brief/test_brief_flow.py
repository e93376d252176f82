"""Blocks on pages: none parted, tables go on with their header."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from asfitted.errors import DoesNotFitError
from asfitted.layout.brief.flow import GAP_MM, Block, Rows, pages_of, table_rows
from asfitted.layout.brief.wall_pages import best_walls
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from asfitted.geometry import Point
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Numbers


def nothing(_: Point, __: Numbers) -> tuple[Item, ...]:
    return ()


def test_a_block_that_does_not_fit_goes_whole_to_the_next_page() -> None:
    blocks = [Block(60.0, nothing), Block(50.0, nothing), Block(30.0, nothing)]
    pages = pages_of(blocks, 100.0)
    assert [[b.height_mm for b in page] for page in pages] == [[60.0], [50.0, 30.0]]


def test_a_heading_never_stands_alone_at_the_foot() -> None:
    blocks = [Block(85.0, nothing), Block(8.0, nothing, joined=True), Block(20.0, nothing)]
    assert [len(page) for page in pages_of(blocks, 100.0)] == [1, 2]


def test_a_table_fills_the_page_and_goes_on() -> None:
    table = Table((Column("Tag"),), tuple((f"W{i}",) for i in range(60)), tuple("x" * 60))
    rows = table_rows("t", table)
    pages = pages_of([Block(50.0, nothing), rows], 120.0)
    heights = [sum(b.height_mm for b in page) + GAP_MM * (len(page) - 1) for page in pages]
    assert all(height <= 120.0 for height in heights)
    assert len(pages) >= 3
    row_mm, head_mm = rows.fitted.row_mm[0], rows.fitted.header_mm
    shown = [round((b.height_mm - head_mm) / row_mm) for page in pages for b in page[-1:]]
    assert sum(shown) == 60


def test_a_block_higher_than_a_page_is_refused() -> None:
    with pytest.raises(DoesNotFitError, match="no page"):
        pages_of([Block(120.0, nothing)], 100.0)


def a_table(count: int) -> Rows:
    return table_rows(
        "t", Table((Column("Tag"),), tuple(("W",) for _ in range(count)), ("x",) * count)
    )


def test_a_table_of_a_wall_is_kept_whole_where_that_costs_no_page() -> None:
    rows = a_table(6)
    whole_mm = rows.height_mm(range(6))
    room = whole_mm + 45.0
    wall: list[Block | Rows] = [Block(10.0, nothing, joined=True), rows]
    before = [Block(whole_mm, nothing)]
    assert len(pages_of([*before, *wall], room)) == 2
    (kept,) = best_walls(before, [wall], [None], [], room)
    pages = pages_of([*before, *kept], room)
    assert [len(page) for page in pages] == [1, 2]
    # what follows would need a page more: then it stays parted
    after = [Block(room - GAP_MM - rows.height_mm(range(4)), nothing)]
    assert len(pages_of([*before, *wall, *after], room)) == 2
    (parted,) = best_walls(before, [wall], [None], after, room)
    assert len(pages_of([*before, *parted, *after], room)) == 2


def test_a_sketch_is_drawn_larger_only_where_that_costs_no_page() -> None:
    small: list[Block | Rows] = [Block(40.0, nothing)]
    large: list[Block | Rows] = [Block(80.0, nothing)]
    assert best_walls([], [small], [large], [], 100.0) == [large]
    assert best_walls([Block(50.0, nothing)], [small], [large], [], 100.0) == [small]
