"""Labels: text keeps its size, stays in its label, and equals the tags of the job."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations
from typing import TYPE_CHECKING

import pytest

from asfitted.errors import DoesNotFitError
from asfitted.geometry import Box
from asfitted.layout.brief.label_grid import ROOM, grid_for, label_items
from asfitted.layout.brief.label_words import (
    Label,
    cable_labels,
    device_labels,
    way_labels,
)
from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Text
from asfitted.layout.sheet_model import Numbers
from asfitted.resolve.stock_facts import LabelGrid
from asfitted.sheets import framed, labels

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

    Models = dict[str, Model]

LABELS = tuple(Label(f"x{i}", f"W{i:02d}", ("DB1/3TP to X1", "4c × 6 mm²")) for i in range(30))


STOCK = LabelGrid(  # an invented stock of labels
    columns=3,
    rows=8,
    width_mm=62.0,
    height_mm=31.0,
    left_margin_mm=9.0,
    top_margin_mm=12.0,
    gap_across_mm=3.0,
    gap_down_mm=2.0,
)


@pytest.mark.parametrize("asked", [LabelGrid(), STOCK])
def test_words_stay_inside_their_label_clear_of_where_it_is_cut(asked: LabelGrid) -> None:
    grid = grid_for(LABELS, asked)
    items = [item for item in label_items(LABELS[: grid.count], grid) if item.kind == "text"]
    assert len(items) == min(grid.count, len(LABELS))
    for place, item in enumerate(items):
        for part in item.parts:
            assert isinstance(part, Text)
            assert part.cap_mm in (2.5, 3.5)
            assert grid.cell(place).grown(-1.5).holds(box_of(part)), part.text


def test_our_own_grid_is_even_and_fills_what_a_printer_prints() -> None:
    """Eight millimetres at each edge are left to the printer: common practice."""
    grid = grid_for(LABELS, LabelGrid())
    cells = [grid.cell(place) for place in range(grid.count)]
    assert {(round(c.width, 6), round(c.height, 6)) for c in cells} == {
        (round(grid.width_mm, 6), round(grid.height_mm, 6))
    }
    assert (grid.box.x0, grid.box.x1) == pytest.approx((8.0, 202.0))
    assert (grid.box.y0, grid.box.y1) == pytest.approx((ROOM.y0, ROOM.y1))
    lines = label_items(LABELS[:1], grid)[0]
    assert lines.ident == "cut-lines"
    assert len(lines.parts) == grid.columns + grid.rows + 2


def test_a_stock_of_labels_is_printed_where_its_labels_are_and_has_no_lines() -> None:
    grid = grid_for(LABELS, STOCK)
    assert (grid.cell(0).x0, grid.cell(0).y0) == (9.0, 12.0)
    # by hand: 9 + 2 x (62 + 3) = 139 across, 12 + (31 + 2) = 45 down
    assert (grid.cell(5).x0, grid.cell(5).y0) == (139.0, 45.0)
    assert grid.count == 24
    assert all(item.kind == "text" for item in label_items(LABELS[:3], grid))


def test_a_stock_that_runs_off_the_paper_is_refused() -> None:
    with pytest.raises(DoesNotFitError, match="larger than"):
        grid_for(LABELS, replace(STOCK, left_margin_mm=30.0))


@pytest.mark.parametrize("asked", [LabelGrid(), STOCK])
def test_plain_paper_has_one_line_at_its_foot_and_no_frame(
    demo_models: Models, asked: LabelGrid
) -> None:
    model = demo_models["pottery-studio"]
    stock = replace(model.installation.stock, labels=asked)
    model = replace(model, installation=replace(model.installation, stock=stock))
    plans = labels.plan(model)
    numbers = Numbers({plan.key: f"{i:02d}" for i, plan in enumerate(plans, start=1)})
    for plan in plans:
        sheet = framed(plan, labels.build(plan, model, numbers), model, numbers)
        assert not any(item.kind == "frame" for item in sheet.items)
        foot = [item for item in sheet.items if item.ident.startswith("title-block")]
        told = " ".join(part.text for i in foot for part in i.parts if isinstance(part, Text))
        for wanted in (f"J2631-{sheet.number}", "P01", "not a certificate", "full size"):
            assert wanted in told
        lines = {part.at.y for i in foot for part in i.parts if isinstance(part, Text)}
        assert len(lines) == 1
        boxes = [box_of(part) for i in sheet.items for part in i.parts if isinstance(part, Text)]
        assert not any(a.grown(-0.05).meets(b.grown(-0.05)) for a, b in combinations(boxes, 2))
        paper = Box(5.0, 5.0, 205.0, 292.0)
        assert all(paper.holds(box) for box in boxes)


def test_the_grid_asked_for_is_the_grid_drawn() -> None:
    grid = grid_for(LABELS, LabelGrid(columns=2, rows=5, width_mm=80.0, height_mm=40.0))
    assert (grid.columns, grid.rows, grid.count) == (2, 5, 10)
    assert (grid.width_mm, grid.height_mm) == (80.0, 40.0)


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        (LabelGrid(width_mm=14.0), "fewer columns or a greater width"),
        (LabelGrid(height_mm=10.0), "greater height"),
        (LabelGrid(columns=3, width_mm=70.0), "larger than"),
    ],
)
def test_a_grid_that_cannot_hold_the_labels_is_refused(asked: LabelGrid, told: str) -> None:
    with pytest.raises(DoesNotFitError, match=told):
        grid_for(LABELS, asked)


def test_a_long_text_is_wrapped_and_all_labels_grow() -> None:
    long = Label("long", "W99", ("the yard gate at the far end of the lower terrace " * 5,))
    assert (
        grid_for((*LABELS, long), LabelGrid()).height_mm > grid_for(LABELS, LabelGrid()).height_mm
    )


def test_each_new_thing_has_its_labels(demo_models: Models) -> None:
    job = demo_models["pottery-studio"].installation
    model = demo_models["pottery-studio"]
    new = [c.tag for c in job.cables.values() if c.state == "new"]
    assert sorted(label.tag for label in cable_labels(model)) == sorted(new * 2)
    ends = {(label.tag, label.lines[-1]) for label in cable_labels(model)}
    assert {("W05", "this end: DB1"), ("W05", "this end: X1")} <= ends
    assert [label.tag for label in way_labels(model)] == [
        c.tag for c in job.circuits.values() if c.state == "new"
    ]
    assert {"DB2", "X1", "CAM3", "FL1"} <= {label.tag for label in device_labels(model)}
    assert "DB1" not in {label.tag for label in device_labels(model)}  # existing
