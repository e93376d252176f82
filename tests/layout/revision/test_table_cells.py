"""Triangles at rows of tables: in a cell of their own row, wide enough for their code."""

from __future__ import annotations

import pytest

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY
from asfitted.layout.revision.clouds import clouds_round
from asfitted.layout.revision.ink import item_box, solid_boxes
from asfitted.layout.revision.table_cells import FLAT_FOOT_MM, grids, in_own_cell, least_side_mm
from asfitted.layout.revision.triangles import Surroundings, place_triangle, triangle
from asfitted.layout.sheet_layout import Item, Text
from asfitted.layout.table import Column, Table, fit_table, table_items

LIMITS = Box(21.0, 11.0, 409.0, 286.0)
COLUMNS = (Column("Tag"), Column("What"), Column("Remark"))


def table(*rows: tuple[str, str, str]) -> tuple[Item, ...]:
    made = Table(COLUMNS, rows, tuple(row[0] for row in rows))
    fitted = fit_table(made, 380.0)
    return table_items("t", fitted, range(len(rows)), Point(25.0, 30.0))[0]


def row_of(items: tuple[Item, ...], tag: str) -> Box:
    return item_box(next(i for i in items if i.ident == f"t:{tag}"))


@pytest.mark.parametrize("code", ["02", "B", "11"])
def test_the_triangle_of_a_row_stands_in_one_cell_of_that_row(code: str) -> None:
    items = table(("W1", "cable", ""), ("W2", "", "new"), ("W3", "cable", ""), ("W4", "", ""))
    words = tuple(solid_boxes(items))
    core = row_of(items, "W2")
    (cloud,) = clouds_round([core], words, LIMITS)
    found = grids(items)
    box, leader = place_triangle(cloud, code, Surroundings(words, (), LIMITS, found), ())
    (grid,) = found
    ((top, foot),) = grid.rows_of(core)
    assert leader is None
    assert top < box.y0 < box.y1 < foot
    assert any(a < box.x0 and box.x1 < b for a, b in zip(grid.xs, grid.xs[1:], strict=False))
    assert not any(box.meets(word) for word in words)


@pytest.mark.parametrize("height_mm", [4.6, 4.8, 6.9])
def test_a_low_triangle_still_holds_its_code(height_mm: float) -> None:
    side = least_side_mm("02", height_mm)
    box = Box(50.0, 50.0, 50.0 + side, 50.0 + height_mm)
    _, text = triangle(box, "02", 0.25)
    assert isinstance(text, Text)
    top = box.y1 - text.at.y + BODY  # of the capitals, over the base
    assert box.y1 - text.at.y > FLAT_FOOT_MM - 1e-6
    assert text_width_mm("02", BODY, bold=True) <= side * (1 - top / height_mm)


def test_a_row_without_room_has_no_triangle_in_a_neighbour() -> None:
    items = table(("W1", "", ""), ("W2", "x " * 60, "y " * 60), ("W3", "", ""))
    words = tuple(solid_boxes(items))
    core = row_of(items, "W2")
    (grid,) = grids(items)
    found = in_own_cell(core, "02", (grid,), words, ())
    ((top, foot),) = grid.rows_of(core)
    assert found is None or (top < found.y0 and found.y1 < foot)


def test_what_stands_in_no_table_has_no_cell() -> None:
    items = table(("W1", "", ""))
    assert in_own_cell(Box(30, 200, 60, 204), "02", grids(items), (), ()) is None
