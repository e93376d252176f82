"""What elevations say of the pottery, against the places and runs of its spec."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from asfitted.layout.elevation.notes import CROSSINGS, general_notes
from asfitted.layout.elevation.schedules import drop_table
from asfitted.layout.elevation.stretch_drawing import Outlines
from asfitted.layout.elevation.thing_drawing import thing_box
from asfitted.layout.elevation.wall_content import walls_with_content
from asfitted.layout.elevation.wall_drawing import marks_on
from asfitted.layout.elevation.wall_view import WallView
from asfitted.layout.elevation.wall_words import lengths_on_sheet
from asfitted.layout.plan.declared_ends import declared_notes
from asfitted.layout.plan.out_in_room import out_table

if TYPE_CHECKING:
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.sheet_model import Model


@pytest.fixture(name="pottery")
def pottery_model(demo_models: dict[str, Model]) -> Model:
    return demo_models["pottery-studio"]


@pytest.fixture(name="walls")
def pottery_walls(pottery: Model) -> dict[str, WallContent]:
    contents = walls_with_content(pottery.installation, pottery.results)
    return {content.wall.name: content for content in contents}


def test_running_dimensions_name_everything_that_stands_there(
    walls: dict[str, WallContent],
) -> None:
    on_a = {mark.along_mm: " ".join(mark.lines) for mark in marks_on(walls["A"])}
    assert on_a[7500] == "7500 F2"  # J1 and FL1 are dimensioned on the outer face
    assert on_a[2000] == "2000 W16-2"  # where the lighting cable leaves the wall
    on_d = [" ".join(mark.lines) for mark in marks_on(walls["D"])]
    assert on_d == [
        "0",
        "1000 T1",
        "1500 M1",
        "2200 Q2",
        "3600 Q3",
        "4100 Q4 M2",
        "5400 DB1 T4",
        "6400",
    ]


def test_boards_give_centre_and_top_and_upright_runs_both_ends(
    walls: dict[str, WallContent],
) -> None:
    (board,) = [t for t in walls["D"].things if t.tag == "DB1"]
    assert board.lines == ("C/L +1600, T/O +1950", "existing")  # 450 x 700 at 1.6 m
    assert [p.level for p in walls["D"].pieces if p.run.tag == "T4"] == ["from +1950 to +2900"]


def test_drops_say_where_and_what_for(walls: dict[str, WallContent]) -> None:
    table = drop_table(walls["C"])
    assert table is not None
    assert [c.header for c in table.columns[:3]] == ["At mm", "Serves", "Cables"]
    assert [row[:3] for row in table.rows] == [
        ("2400", "K1", "W08-2"),
        ("2400", "Q1", "W08"),
        ("7300", "CAB1", "D03 D04 D06"),  # recorder and switch stand in the cabinet
        ("7300", "CAB1", "D05"),
    ]


def test_a_drop_passes_beside_the_box_on_the_other_face(walls: dict[str, WallContent]) -> None:
    content = walls["A"]
    view = WallView(content.wall, 25, 40.0, 200.0)
    boxes = {t.tag: thing_box(view, t) for t in content.things}
    drawn = {s.stretch.cables: s for s in lengths_on_sheet(view, content)}
    points = Outlines(tuple(boxes.values())).trimmed(drawn["W17",])
    assert points[0].x > boxes["J1"].x1
    assert points[-1].x == pytest.approx(view.x(7500.0))
    assert points[-1].y == pytest.approx(boxes["F2"].y0)


def test_notes_name_what_data_crosses(pottery: Model, walls: dict[str, WallContent]) -> None:
    in_front = "it passes in front, 100 off the wall"  # its stand-off in the job file
    assert walls["D"].crossed == (
        f"T3 crosses T4 and cables W09 W10 W10-3; {in_front}",
        "T1 passes in front of W10-3, 130 off the wall",
    )
    assert walls["C"].crossed == ()
    contents = list(walls.values())
    assert CROSSINGS in general_notes(contents, pottery.results, widened=False)
    assert CROSSINGS not in general_notes([walls["C"]], pottery.results, widened=False)


def test_things_out_in_the_room_have_their_place_in_figures(pottery: Model) -> None:
    table = out_table(pottery.installation, pottery.results)
    assert table is not None
    rows = {row[0]: row[1:] for row in table.rows}
    assert list(rows) == ["L1", "L2", "L3", "L4", "AP1"]
    assert rows["L3"][1:5] == ("A", "6000", "4800", "+3500")
    assert rows["L1"][5] == "W16-2 from wall A at 2000, 25 mm steel conduit"
    assert rows["AP1"][5] == "D06 from wall A at 4000, clipped"


def test_nothing_out_in_the_room_is_no_table(demo_models: dict[str, Model]) -> None:
    shop = demo_models["shop-cctv"]
    assert out_table(shop.installation, shop.results) is None


def test_a_measured_length_is_not_called_declared(pottery: Model) -> None:
    (note,) = declared_notes(pottery.installation)
    assert note.startswith("Length measured, way not drawn: U1 50 mm buried duct")
    assert "58 m (m) to post at the yard gate" in note
