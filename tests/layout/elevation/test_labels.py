"""Words on the elevations of the demo jobs: leaders keep apart, and words never set the scale."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import pytest
from grown_rooms import grown_model, numbers_for

from asfitted.draw.symbols import catalogue
from asfitted.fonts import text_width_mm
from asfitted.geometry import Box
from asfitted.layout.elevation.set_scale import SCALES, view_fits
from asfitted.layout.elevation.wall_content import walls_with_content
from asfitted.layout.free_room import line_meets_box, lines_cross
from asfitted.layout.sheet_layout import Path, Text, text_box
from asfitted.layout.sheet_model import Model
from asfitted.pipeline import check_job
from asfitted.sheets import elevations

if TYPE_CHECKING:
    from pathlib import Path as FilePath

    from asfitted.geometry import Point
    from asfitted.layout.elevation.sheet_packing import PlannedView
    from asfitted.layout.sheet_layout import Item, SheetLayout

JOBS = ("pottery-studio", "community-shed", "shop-cctv")
LONGEST_LEADER_MM = 62.0
SMALL_HIGH_ROOM = 5  # seed of a room 3.6 m high
MORE_SOCKETS = """
  - way: DB2/{way}
    name: Glaze store socket-outlet with a remarkably long name {n}
    vulnerable: none
    device: RCBO B20 30 mA type A 6 kA
    cable: T&E
    drops: 20 mm steel conduit
    points:
      - {{tag: GLAZE-STORE-{n}, is: 13 A socket, gangs: 2, IP: IP2X,
         at: "wall A, {along} m along, 1.2 m up"}}
"""
Leader = tuple["Point", "Point"]


def leaders_of(items: tuple[Item, ...]) -> list[tuple[str, Leader]]:
    return [
        (item.ident, (part.points[0], part.points[-1]))
        for item in items
        if item.ident.endswith(":leader")
        for part in item.parts
        if isinstance(part, Path)
    ]


def words_of(items: tuple[Item, ...]) -> list[tuple[str, Box]]:
    return [
        (item.ident, text_box(t, text_width_mm(t.text, t.cap_mm, bold=t.bold)))
        for item in items
        for t in item.parts
        if isinstance(t, Text)
    ]


def outlines_of(items: tuple[Item, ...]) -> list[tuple[str, Box]]:
    found = []
    for item in items:
        if item.ident.startswith("thing:") and isinstance(item.parts[0], Path):
            xs, ys = zip(*item.parts[0].points, strict=True)
            found.append((item.ident.split(":")[1], Box(min(xs), min(ys), max(xs), max(ys))))
    return found


def drawings(sheets: tuple[SheetLayout, ...]) -> list[SheetLayout]:
    return [s for s in sheets if "elevation" in s.name]


@pytest.mark.parametrize("job", JOBS)
def test_leaders_do_not_cross_each_other(
    demo_sheets: dict[str, tuple[SheetLayout, ...]], job: str
) -> None:
    for sheet in drawings(demo_sheets[job]):
        leaders = leaders_of(sheet.items)
        for i, (name, one) in enumerate(leaders):
            assert not [n for n, other in leaders[i + 1 :] if lines_cross(*one, *other)], name


@pytest.mark.parametrize("job", JOBS)
def test_leaders_run_through_no_words_and_no_accessory_but_their_own(
    demo_sheets: dict[str, tuple[SheetLayout, ...]], job: str
) -> None:
    for sheet in drawings(demo_sheets[job]):
        words, outlines = words_of(sheet.items), outlines_of(sheet.items)
        for name, leader in leaders_of(sheet.items):
            assert not [n for n, box in words if line_meets_box(*leader, box)], name
            crossed = [tag for tag, box in outlines if line_meets_box(*leader, box.grown(-0.3))]
            assert [t for t in crossed if f":{t}:" not in name] == [], name
            assert math.dist(*leader) <= LONGEST_LEADER_MM, name


def test_the_demo_jobs_do_have_leaders(
    demo_sheets: dict[str, tuple[SheetLayout, ...]],
) -> None:
    assert sum(len(leaders_of(s.items)) for s in drawings(demo_sheets["pottery-studio"])) >= 3


@pytest.mark.parametrize("job", JOBS)
def test_the_scale_is_the_largest_that_the_walls_fit(
    demo_models: dict[str, Model], job: str
) -> None:
    model = demo_models[job]
    contents = walls_with_content(model.installation, model.results)
    expected = next(s for s in SCALES if all(view_fits(c, s) for c in contents))
    assert scale_of(model) == expected
    for view in views_of(model):
        assert view.home.left_over.keynotes == ()
        assert view.home.left_over.unplaced == ()


def views_of(model: Model) -> list[PlannedView]:
    payloads = (p.payload for p in elevations.plan(model))
    return [
        view
        for payload in payloads
        if isinstance(payload, elevations.WallPayload)
        for view in payload.sheet.views
    ]


def scale_of(model: Model) -> int:
    scales = {
        p.payload.scale
        for p in elevations.plan(model)
        if isinstance(p.payload, elevations.WallPayload)
    }
    (scale,) = scales
    return scale


def grown_pottery(folder: FilePath, specs: FilePath, more: int) -> Model:
    """Return the pottery with more sockets of long names on wall A."""
    text = (specs / "pottery-studio.yaml").read_text(encoding="utf-8")
    places = {"3L1": 2.6, "3L2": 2.8, "3L3": 5.7, "4L1": 6.3, "4L2": 7.1}
    added = "".join(
        MORE_SOCKETS.format(way=way, n=n, along=along)
        for n, (way, along) in enumerate(list(places.items())[:more], start=1)
    )
    path = folder / f"pottery-{more}.yaml"
    path.write_text(text.replace("\ndata:\n", f"{added}\ndata:\n"), encoding="utf-8")
    checked = check_job(path)
    return Model(checked.installation, checked.results, checked.report, catalogue())


@pytest.mark.parametrize("more", [1, 5])
def test_more_sockets_with_long_names_keep_the_scale(
    demo_models: dict[str, Model],
    tmp_path: FilePath,
    pytestconfig: pytest.Config,
    more: int,
) -> None:
    specs = pytestconfig.rootpath / "specs"
    model = grown_pottery(tmp_path, specs, more)
    assert scale_of(model) == scale_of(demo_models["pottery-studio"]) == 25
    plans = elevations.plan(model)
    numbers = numbers_for(plans)
    wall = next(p for p in plans if p.key == "elevation/A")
    sheet = elevations.build(wall, model, numbers)
    said = " ".join(t.text for i in sheet.items for t in i.parts if isinstance(t, Text))
    assert "SCAN BEFORE DRILLING." in said
    assert f"Other notes and tables: sheet {numbers.of('elevation/schedules')}." in said
    for n in range(1, more + 1):
        assert f"GLAZE-STORE-{n}" in said


def test_general_notes_stand_once_and_every_table_once(
    demo_sheets: dict[str, tuple[SheetLayout, ...]],
) -> None:
    sheets = [s for s in demo_sheets["pottery-studio"] if s.key.startswith("elevation")]
    said = [t.text for s in sheets for i in s.items for t in i.parts if isinstance(t, Text)]
    assert said.count("Notes for all elevations") == 1
    assert [said.count(f"Drops on wall {w}") for w in "ABCD"] == [1] * 4
    assert [said.count(f"What lies in the runs on wall {w}") for w in "ABCD"] == [1, 1, 0, 1]
    walls = [s for s in sheets if "schedules" not in s.key]
    here = [t.text for s in walls for i in s.items for t in i.parts if isinstance(t, Text)]
    assert any(words.startswith("Drops on wall") for words in here)


def test_views_side_by_side_stand_on_one_floor(tmp_path: FilePath) -> None:
    """Same floor line for elevations on one shelf (common practice)."""
    model = grown_model(tmp_path, SMALL_HIGH_ROOM, long_m=4.0, wide_m=3.0, sockets=6)
    payloads = [p.payload for p in elevations.plan(model)]
    walls = [p for p in payloads if isinstance(p, elevations.WallPayload)]
    assert len(walls) < sum(len(p.sheet.views) for p in walls)
    for payload in walls:
        drawn = [v.drawn for v in payload.sheet.views if not v.content.detail]
        assert len({round(d.view.floor, 6) for d in drawn}) <= 1
        assert not any(a.box.meets(b.box) for i, a in enumerate(drawn) for b in drawn[i + 1 :])


def test_corner_flags_and_run_tags_stand_on_their_wall(demo_models: dict[str, Model]) -> None:
    for view in views_of(demo_models["pottery-studio"]):
        content, drawn = view.content, view.home
        written = words_of(drawn.items)
        idents = {name for name, _ in written}
        for flag in content.flags:
            assert f"flag:{flag.side}:{flag.tag}:{round(flag.up_mm)}" in idents
        for piece in content.pieces:
            assert f"run-tag:{piece.run.tag}:{piece.index}" in idents
        for name, box in written:
            if name.startswith(("flag:", "run-tag:")):
                assert drawn.view.box.holds(box), name
