from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.geometry import Box
from asfitted.layout.plan.plan_frame import PlanFrame
from asfitted.layout.plan.plan_parts import MOST_THINGS, PlanPart, plan_parts, scale_of

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Installation

AREA = PlanFrame("A3").area


def crowded(installation: Installation, times: int) -> Installation:
    """Return the job with its points many times over, a little further along each time."""
    points = {}
    for i in range(times):
        for tag, point in installation.points.items():
            at = point.position.at
            moved = at._replace(x=min(max(at.x + 150.0 * i, 0.0), 7999.0))
            position = replace(point.position, at=moved)
            points[f"{tag}-{i}"] = replace(point, tag=f"{tag}-{i}", position=position)
    return replace(installation, points=MappingProxyType(points))


def test_small_jobs_have_one_plan(demo_models: dict[str, Model]) -> None:
    for model in demo_models.values():
        (part,) = plan_parts(model.installation, AREA)
        assert part.open_sides == ()


def test_a_crowded_room_is_cut_and_each_thing_has_one_plan(
    demo_models: dict[str, Model],
) -> None:
    installation = crowded(demo_models["pottery-studio"].installation, 5)
    parts = plan_parts(installation, AREA)
    assert len(parts) > 2
    for point in installation.points.values():
        assert sum(part.holds(point.position.at) for part in parts) == 1
    most = max(
        sum(part.holds(p.position.at) for p in installation.points.values()) for part in parts
    )
    assert most <= MOST_THINGS


def test_match_lines_name_each_other(demo_models: dict[str, Model]) -> None:
    parts = plan_parts(crowded(demo_models["pottery-studio"].installation, 5), AREA)
    by_number = {part.number: part for part in parts}
    opposite = {"west": "east", "east": "west", "south": "north", "north": "south"}
    for part in parts:
        assert part.open_sides
        for side, number in part.open_sides:
            assert opposite[side] in {s for s, _ in by_number[number].open_sides}


def test_a_long_room_is_cut_until_the_scale_is_good_enough(
    demo_models: dict[str, Model],
) -> None:
    installation = demo_models["pottery-studio"].installation
    small = Box(0.0, 0.0, 120.0, 100.0)
    assert len(plan_parts(installation, small)) > 1


def test_a_part_that_goes_on_needs_less_paper_beside_it() -> None:
    window = Box(0.0, 0.0, 4000.0, 5400.0)  # 108 mm high at 1:50
    area = Box(20.0, 10.0, 280.0, 158.0)  # 148 mm: 106 within margins of 21 mm
    closed = PlanPart(1, "ground", ("hall",), window)
    opened = PlanPart(1, "ground", ("hall",), window, (("south", 2),))
    assert scale_of(window, closed.room(area)) == 100
    assert scale_of(window, opened.room(area)) == 50
