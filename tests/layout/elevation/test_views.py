"""Parts of long walls, outer faces, corners, details: what stands on both sides agrees."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

import pytest
from grown_rooms import grown_model, numbers_for

from asfitted.geometry import Box
from asfitted.layout.elevation.dimension_chain import chain_parts
from asfitted.layout.elevation.free_boxes import without
from asfitted.layout.elevation.shown_part import outer_face_of
from asfitted.layout.elevation.wall_content import walls_with_content
from asfitted.layout.elevation.wall_drawing import marks_on
from asfitted.layout.frame import zone_of
from asfitted.layout.sheet_layout import Text
from asfitted.sheets import elevations

if TYPE_CHECKING:
    from asfitted.layout.elevation.sheet_packing import PlannedView
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model, SheetPlan


@pytest.fixture(name="hall", scope="module")
def long_hall(tmp_path_factory: pytest.TempPathFactory) -> Model:
    folder = tmp_path_factory.mktemp("hall")
    return grown_model(folder, 5, long_m=60.0, wide_m=8.0, sockets=30)


@pytest.fixture(name="crowd", scope="module")
def crowded_room(tmp_path_factory: pytest.TempPathFactory) -> Model:
    folder = tmp_path_factory.mktemp("crowd")
    return grown_model(folder, 4, long_m=9.0, wide_m=2.0, sockets=38)


def views_by_sheet(plans: list[SheetPlan]) -> list[tuple[SheetPlan, PlannedView]]:
    return [
        (plan, view)
        for plan in plans
        if isinstance(plan.payload, elevations.WallPayload)
        for view in plan.payload.sheet.views
    ]


def planned(model: Model) -> list[PlannedView]:
    return [view for _, view in views_by_sheet(elevations.plan(model))]


def parts(model: Model, wall: str) -> list[WallContent]:
    found = [v.content for v in planned(model)]
    return [c for c in found if c.wall.name == wall and not c.detail and c.face == "inside"]


def words(items: tuple[Item, ...], ident: str) -> str:
    return " ".join(
        p.text for i in items if i.ident.endswith(ident) for p in i.parts if isinstance(p, Text)
    )


def test_parts_of_a_long_wall_meet_without_overlap_and_sum_to_it(hall: Model) -> None:
    found = parts(hall, "A")
    assert len(found) >= 4  # 60 m at 1:50 on a sheet 380 mm wide
    windows = [c.window for c in found]
    assert (windows[0].from_mm, windows[-1].to_mm) == (0.0, 60000.0)
    for one, other in itertools.pairwise(windows):
        assert one.to_mm == other.from_mm
        assert one.right.name == other.left.name != ""
    assert sum(sum(chain_parts(marks_on(c))) for c in found) == 60000


def test_no_match_line_runs_through_a_thing(hall: Model) -> None:
    (whole,) = [
        c for c in walls_with_content(hall.installation, hall.results) if c.wall.name == "A"
    ]
    cuts = [c.window.to_mm for c in parts(hall, "A")][:-1]
    for cut in cuts:
        assert not [t.tag for t in whole.things if abs(t.at.along - cut) < t.width_mm / 2]


def test_match_lines_name_sheet_and_zone_of_each_other(hall: Model) -> None:
    plans = elevations.plan(hall)
    numbers = numbers_for(plans)
    keys = [c.key for c in parts(hall, "A")]
    views = {v.content.key: (plan, v) for plan, v in views_by_sheet(plans)}
    for one, other in itertools.pairwise(keys):
        (plan, view), (twin_plan, twin) = views[one], views[other]
        window, far = view.content.window, twin.drawn.view
        zone = zone_of(twin_plan.paper, far.at(window.to_mm, window.high_mm))
        built = elevations.build(plan, hall, numbers).items
        said = words(built, "fold:right:words")
        assert said == f"match line, sheet {numbers.of(other)}/{zone}"
        assert words(built, "fold:right:name") == twin.content.window.left.name


def test_a_run_has_the_same_tag_on_both_sides_of_a_match_line(hall: Model) -> None:
    plans = elevations.plan(hall)
    numbers = numbers_for(plans)
    tags = []
    for plan, view in views_by_sheet(plans):
        if view.content.wall.name == "C":
            tags.append(words(elevations.build(plan, hall, numbers).items, "run-tag:T1:2"))
    assert len(tags) >= 4
    assert len({t.replace(":", "") for t in tags}) == 1


def test_details_hold_what_had_no_room_and_are_named_on_both_sheets(crowd: Model) -> None:
    plans = elevations.plan(crowd)
    numbers = numbers_for(plans)
    views = {v.content.key: (plan, v) for plan, v in views_by_sheet(plans)}
    details = [v for _, v in views.values() if v.content.detail]
    assert details
    for detail in details:
        content = detail.content
        plan, parent = views[content.key.rpartition("/")[0]]
        sheet = numbers.of(views[content.key][0].key)
        mark = next(m for m in parent.frame.details if m.letter == content.detail)
        assert mark.window == content.window
        assert detail.frame.scale < parent.frame.scale
        built = elevations.build(plan, crowd, numbers).items
        said = " ".join(p.text for i in built for p in i.parts if isinstance(p, Text))
        assert f"Detail {mark.letter}" in said
        assert f"1:{detail.frame.scale}, sheet {sheet}/" in said
        assert sum(chain_parts(marks_on(content))) == round(content.window.to_mm) - round(
            content.window.from_mm
        )
    for _, view in views.values():
        assert len(view.home.left_over.keynotes) <= 3


def test_a_dimension_stands_on_the_view_or_its_detail_never_on_both(crowd: Model) -> None:
    views = {v.content.key: v for v in planned(crowd)}
    for view in views.values():
        if view.content.detail:
            parent = views[view.content.key.rpartition("/")[0]]
            marked = {n for m in marks_on(parent.content, parent.frame.details) for n in m.names}
            assert not marked & {t.tag for t in view.content.things}


def test_the_outer_face_is_seen_the_other_way_round(demo_models: dict[str, Model]) -> None:
    model = demo_models["pottery-studio"]
    contents = {c.key: c for c in walls_with_content(model.installation, model.results)}
    inside = contents["elevation/A"]
    outside = outer_face_of(inside)
    assert outside.key == "elevation/A/outside"
    assert {t.tag for t in outside.things} == {"CAM1", "FL1", "J1"}
    for thing in outside.things:
        (same,) = [t for t in inside.things if t.tag == thing.tag]
        assert thing.at.along == pytest.approx(inside.wall.length_mm - same.at.along)
    names = (outside.window.left.name, outside.window.right.name)
    assert names == (inside.window.right.name, inside.window.left.name)
    assert outside.window.left.is_outer
    assert outside.window.right.is_outer


def test_shared_sheets_can_be_found_by_every_wall(demo_models: dict[str, Model]) -> None:
    for model in demo_models.values():
        plans = elevations.plan(model)
        keys = {key for p in plans for key in (p.key, *p.also)}
        for content in walls_with_content(model.installation, model.results):
            assert content.key in keys


def test_free_boxes_never_meet_what_was_taken() -> None:
    taken = [Box(10, 10, 60, 40), Box(50, 60, 90, 95), Box(0, 45, 30, 70)]
    free: tuple[Box, ...] = (Box(0, 0, 100, 100),)
    for box in taken:
        free = without(free, box)
    assert free
    for box in free:
        assert not any(box.meets(t) for t in taken)
    # every point that is free lies in one of them, down to strips thinner than a text line
    assert any(b.holds(Box(70, 10, 80, 50)) for b in free)
