"""Elevations of the demo jobs against the facts of their specs."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from asfitted.geometry import Point3
from asfitted.layout.elevation.dimension_chain import chain_parts
from asfitted.layout.elevation.drops_on_wall import clipped_corner_flags, upright
from asfitted.layout.elevation.run_drawing import LEAST_MM, piece_box
from asfitted.layout.elevation.runs_on_wall import corner_flags, crossings_on, pieces_on
from asfitted.layout.elevation.thing_drawing import thing_box
from asfitted.layout.elevation.things_on_wall import things_on
from asfitted.layout.elevation.wall_content import walls_with_content
from asfitted.layout.elevation.wall_drawing import marks_on
from asfitted.layout.elevation.wall_view import WallView, height_words, on_wall

if TYPE_CHECKING:
    from asfitted.layout.elevation.runs_on_wall import CornerFlag
    from asfitted.layout.sheet_model import Model

JOBS = ("pottery-studio", "community-shed", "shop-cctv")


def flags_of(model: Model) -> list[CornerFlag]:
    found: list[CornerFlag] = []
    for wall in model.installation.walls.values():
        found += corner_flags(model.installation, model.results, wall)
        found += clipped_corner_flags(model.installation, model.results, wall)
    return found


@pytest.mark.parametrize("job", JOBS)
def test_both_sides_of_a_corner_say_the_same(demo_models: dict[str, Model], job: str) -> None:
    flags = flags_of(demo_models[job])
    assert flags
    for flag in flags:
        twins = [f for f in flags if f.wall == flag.to and f.to == flag.wall and f.tag == flag.tag]
        assert [t.shared for t in twins if t.side != flag.side] == [flag.shared]


@pytest.mark.parametrize("job", JOBS)
def test_a_flag_stands_on_the_corner_shared_with_its_wall(
    demo_models: dict[str, Model], job: str
) -> None:
    walls = demo_models[job].installation.walls
    for flag in flags_of(demo_models[job]):
        goes_right = walls[flag.wall].next_wall == flag.to
        assert flag.side == ("right" if goes_right else "left")


@pytest.mark.parametrize("job", JOBS)
def test_things_keep_their_place_in_the_building(demo_models: dict[str, Model], job: str) -> None:
    installation = demo_models[job].installation
    for wall in installation.walls.values():
        view = WallView(wall, 25, 40.0, 200.0)
        for thing in things_on(installation, wall):
            centre = thing_box(view, thing).centre
            assert centre.x == pytest.approx(40.0 + thing.at.along / 25)
            assert centre.y == pytest.approx(200.0 - thing.at.up / 25)


@pytest.mark.parametrize("job", JOBS)
def test_chains_sum_exactly(demo_models: dict[str, Model], job: str) -> None:
    model = demo_models[job]
    for content in walls_with_content(model.installation, model.results):
        assert sum(chain_parts(marks_on(content))) == round(content.wall.length_mm)


@pytest.mark.parametrize("job", JOBS)
def test_every_drop_has_cables_and_two_ends(demo_models: dict[str, Model], job: str) -> None:
    model = demo_models[job]
    drops = [
        drop
        for content in walls_with_content(model.installation, model.results)
        for drop in upright(content.stretches)
    ]
    assert drops
    for drop in drops:
        assert drop.cables
        assert drop.top
        assert drop.foot
        assert drop.end.up > drop.start.up


def test_the_tray_lies_below_its_top_and_the_basket_above_its_underside(
    demo_models: dict[str, Model],
) -> None:
    installation = demo_models["pottery-studio"].installation
    wall = installation.walls["A"]
    view = WallView(wall, 10, 0.0, 0.0)
    boxes = {p.run.tag: piece_box(view, p) for p in pieces_on(installation, wall)}
    tray, basket = boxes["T1"], boxes["T3"]
    # level 2.9 m T/O, 25 mm deep; level 2.55 m U/S, 55 mm deep (the spec of the demo)
    assert (tray.y0, tray.y1) == pytest.approx((-290.0, -287.5))
    assert (basket.y0, basket.y1) == pytest.approx((-260.5, -255.0))


def test_thin_containment_is_widened_not_lost(demo_models: dict[str, Model]) -> None:
    installation = demo_models["pottery-studio"].installation
    wall = installation.walls["A"]
    view = WallView(wall, 100, 0.0, 0.0)
    for piece in pieces_on(installation, wall):
        assert piece_box(view, piece).height == pytest.approx(LEAST_MM)


def test_a_crossing_is_seen_on_both_walls(demo_models: dict[str, Model]) -> None:
    model = demo_models["pottery-studio"]
    ends = {
        wall.name: [
            (c.run.tag, c.to, round(c.at.along), c.level)
            for c in crossings_on(model.installation, model.results, wall)
        ]
        for wall in model.installation.walls.values()
    }
    assert ends["A"] == [("T2", "C", 5600, "T/O +2900")]
    assert ends["C"] == [("T2", "A", 2400, "T/O +2900")]
    assert ends["B"] == []


def test_wall_coordinates_run_left_to_right_from_inside(demo_models: dict[str, Model]) -> None:
    installation = demo_models["pottery-studio"].installation
    for wall in installation.walls.values():
        nxt = installation.walls[wall.next_wall]
        corner = on_wall(wall, Point3(nxt.start.x, nxt.start.y, 0.0))
        assert corner.along == pytest.approx(wall.length_mm)
        assert corner.out == pytest.approx(0.0)


def test_heights_are_signed_whole_millimetres() -> None:
    assert [height_words(h) for h in (0.0, 1200.0, 2899.6, -150.0)] == [
        "±0",
        "+1200",
        "+2900",
        "−150",
    ]
