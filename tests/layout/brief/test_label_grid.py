"""Labels: text keeps its size, stays in its label, and equals the tags of the job."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from asfitted.errors import DoesNotFitError
from asfitted.geometry import Box
from asfitted.layout.brief.label_grid import MARK_MM, ROOM, grid_for, label_items
from asfitted.layout.brief.label_words import (
    Label,
    cable_labels,
    device_labels,
    way_labels,
)
from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Text
from asfitted.resolve.stock_facts import LabelGrid

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

    Models = dict[str, Model]

LABELS = tuple(Label(f"x{i}", f"W{i:02d}", ("DB1/3TP to X1", "4c × 6 mm²")) for i in range(30))


def test_words_stay_inside_their_label_clear_of_the_cut_marks() -> None:
    grid = grid_for(LABELS, LabelGrid())
    items = label_items(LABELS[: grid.count], grid)
    for place, item in enumerate(items[1:]):
        row, column = divmod(place, grid.columns)
        x, y = ROOM.x0 + column * grid.width_mm, ROOM.y0 + row * grid.height_mm
        cell = Box(x, y, x + grid.width_mm, y + grid.height_mm)
        for part in item.parts:
            assert isinstance(part, Text)
            assert part.cap_mm in (2.5, 3.5)
            assert cell.grown(-MARK_MM / 2).holds(box_of(part)), part.text


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
    long = Label("long", "W99", ("the yard gate at the far end of the lower terrace " * 2,))
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
