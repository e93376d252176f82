"""Detail sheets: what each figure joins to what, for which tags, and that nothing collides."""

from __future__ import annotations

import dataclasses
import itertools
import math
import re
import sys
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

import pytest

sys.path.insert(0, str(Path(__file__).parent.parent / "data_diagram"))  # for grown_data.py

from grown_data import grown_model

from asfitted.dev.sheet_faults import faults_of_content
from asfitted.geometry import Box, Point
from asfitted.layout.details.armoured_ends import armoured_ends
from asfitted.layout.details.camera_ends import camera_ends
from asfitted.layout.details.conductors import CableEnd
from asfitted.layout.details.figure import tag_lines
from asfitted.layout.details.isolators import isolators
from asfitted.layout.details.machine import IsolatorFigure
from asfitted.layout.details.outlet import FACE_MM, FaceFigure, OutletFigure
from asfitted.layout.details.outlets import outlets
from asfitted.layout.lettering import BODY, fits
from asfitted.layout.sheet_layout import Item, SymbolUse, Text
from asfitted.layout.sheet_layout import Path as Line
from asfitted.layout.sheet_model import Numbers
from asfitted.sheets import details

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Paper, SheetLayout
    from asfitted.layout.sheet_model import Model

    Models = dict[str, Model]

AT = Point(30.0, 40.0)
FOUR_CORE = CableEnd("armoured", 4, "armour")


def built(model: Model) -> list[tuple[str, Paper, tuple[Item, ...]]]:
    plans = details.plan(model)
    numbers = Numbers(MappingProxyType({p.key: f"{i:02d}" for i, p in enumerate(plans, 1)}))
    return [(p.key, p.paper, details.build(p, model, numbers).items) for p in plans]


def said(items: tuple[Item, ...]) -> str:
    return " ".join(p.text for item in items for p in item.parts if isinstance(p, Text))


def ends_of(items: tuple[Item, ...], net: str) -> list[Point]:
    wires = [i for i in items if i.kind == "wire" and i.net.endswith(net)]
    return [p for w in wires for path in w.parts if isinstance(path, Line) for p in path.points]


@pytest.mark.parametrize("paper", ["A3", "A4"])
@pytest.mark.parametrize("seed", range(12))
def test_sheets_of_any_job_have_no_faults(seed: int, paper: Paper) -> None:
    for key, found_paper, items in built(grown_model(seed, paper)):
        assert faults_of_content(items, found_paper) == [], key


@pytest.mark.parametrize("seed", range(12))
def test_every_new_thing_stands_in_exactly_one_figure_and_one_row(seed: int) -> None:
    model = grown_model(seed)
    for find in (outlets, isolators, camera_ends):
        subject = find(model)
        if subject is None:
            continue
        rows = list(subject.table.row_idents)
        figures = [f for f in subject.figures if not isinstance(f, FaceFigure)]
        drawn_for = [tag for f in figures for tag in f.tags]  # type: ignore[attr-defined]
        assert sorted(drawn_for) == sorted(rows)
        assert len(set(rows)) == len(rows)


def test_the_pottery_outlets_are_told_with_way_gland_and_lead(demo_models: Models) -> None:
    subject = outlets(demo_models["pottery-studio"])
    assert subject is not None
    row = dict(zip(subject.table.row_idents, subject.table.rows, strict=True))["X1"]
    cable = demo_models["pottery-studio"].results.cables["W05"]
    assert row[3] == "DB1/3TP"
    assert cable.words in row[5]
    # gland 20 for 4 x 6 mm2: a maker's chart (seen); lead as the line conductor (common practice)
    assert row[6:8] == ("20 CW", "6 mm²")  # IP44: sealed


def test_only_the_details_that_a_job_needs_are_drawn(demo_models: Models) -> None:
    keys = [key for key, _, _ in built(demo_models["shop-cctv"])]
    assert keys == ["details-data-ends"]
    assert outlets(demo_models["community-shed"]) is None


def test_every_sheet_of_details_bids_to_isolate_and_prove_dead(demo_models: Models) -> None:
    for key, _, items in built(demo_models["pottery-studio"]):
        words = said(items).lower()
        assert "caution" in words, key
        assert "prove dead" in words, key


def test_each_live_conductor_of_an_outlet_passes_a_pole_and_none_is_swapped() -> None:
    figure = OutletFigure("outlet1", 1, ("X1",), FOUR_CORE, has_rcd=True)
    items = figure.draw(AT, "A3")
    xs = {}
    for mark in ("L1", "L2", "L3", "N"):
        feed, lead = ends_of(items, f":{mark}:in"), ends_of(items, f":{mark}:out")
        pole = next(i for i in items if i.ident == f"outlet1:{mark}:pole").parts[0]
        assert isinstance(pole, SymbolUse)
        assert max(p.y for p in feed) == pole.at.y  # ends at the top of its pole
        assert min(p.y for p in lead) == pole.at.y + 10
        assert {p.x for p in lead} == {pole.at.x + 5}
        contact = next(i for i in items if i.ident == f"outlet1:{mark}:contact").parts[0]
        assert isinstance(contact, SymbolUse)
        xs[mark] = contact.at.x
    assert list(xs.values()) == sorted(xs.values())


def test_the_protective_conductor_has_no_pole_and_goes_past_the_ring() -> None:
    items = OutletFigure("o", 1, ("X1",), FOUR_CORE, has_rcd=True).draw(AT, "A3")
    assert not [i for i in items if i.ident == "o:PE:pole"]
    ring = next(i for i in items if i.ident == "o:ring").parts[0]
    assert isinstance(ring, Line)
    live = [ends_of(items, f":{m}:out")[0].x for m in ("L1", "L2", "L3", "N")]
    left, right = min(p.x for p in ring.points), max(p.x for p in ring.points)
    assert all(left < x < right for x in live)
    top = min(p.y for p in ring.points)
    beside = [p for p in ends_of(items, ":PE:in") if p.y >= top]
    assert beside
    assert all(not left < p.x < right for p in beside)


def test_contacts_stand_round_the_face_clockwise_from_earth() -> None:
    # BS EN IEC 60309-2: earth at 6 o'clock, then L1, L2, L3, N clockwise from the front
    items = FaceFigure("face", 2, ("X1",), 400.0).draw(AT, "A3")
    marks = {p.text: p.at for i in items for p in i.parts if isinstance(p, Text)}
    face = next(i for i in items if i.ident == "face:face").parts[0]
    assert isinstance(face, SymbolUse)
    centre = face.at.moved(FACE_MM / 2, FACE_MM / 2)
    turns = []
    for mark in ("L1", "L2", "L3", "N"):
        at = marks[mark]
        angle = math.degrees(math.atan2(at.y - 1.75 - centre.y, at.x - centre.x))
        turns.append((angle - 90) % 360)
    assert turns == pytest.approx([72, 144, 216, 288], abs=0.5)


def isolator(end: CableEnd, tail: CableEnd, poles: int | None) -> tuple[Item, ...]:
    return IsolatorFigure("q", 1, ("Q1",), end, tail, poles, "motor_3ph", is_motor=True).draw(
        AT, "A3"
    )


def test_a_neutral_without_a_pole_is_told_as_a_solid_link() -> None:
    items = isolator(FOUR_CORE, CableEnd("flexible", 5, "core"), 3)
    poles = [i.ident for i in items if i.ident.endswith(":pole")]
    assert poles == ["q:L1:pole", "q:L2:pole", "q:L3:pole"]
    assert "solid link" in said(items)


def test_a_line_without_a_pole_is_told_to_stay_live() -> None:
    items = isolator(FOUR_CORE, CableEnd("flexible", 5, "core"), 2)
    assert "stays live" in said(items)


def test_a_neutral_that_the_machine_does_not_need_ends_in_the_isolator() -> None:
    items = isolator(FOUR_CORE, CableEnd("flexible", 4, "core"), 4)
    assert "ends here" in said(items)
    assert not [i for i in items if i.ident == "q:N:terminal"]
    marks = said(tuple(i for i in items if i.ident.endswith("terminal:mark")))
    assert marks == "U1 V1 W1 earth"


def test_a_pole_too_many_is_told() -> None:
    spare = isolator(CableEnd("armoured", 4, "core"), CableEnd("flexible", 4, "core"), 4)
    assert "one pole not used" in said(spare)


def test_a_cable_that_no_table_holds_reads_not_recorded() -> None:
    assert set(CableEnd("flexible", 7, "core").colours.values()) == {"not recorded"}


def test_strip_lengths_follow_the_gland_and_an_unknown_one_is_said(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    subject = armoured_ends(model)
    assert subject is not None
    by_size = {row[0]: row for row in subject.table.rows}
    # 20S: 30 mm of armour, 150 mm of cores (common practice)
    assert by_size["4c × 1.5 mm² XLPE/SWA/PVC"][3:7] == ("20S", "M20 × 1.5", "30", "150")
    # BS 5467, nominal: 4c 13.3 mm over all, 8.5 over bedding; the thinner 3c 12.6 and 7.8
    assert by_size["4c × 1.5 mm² XLPE/SWA/PVC"][1:3] == ("13.3", "8.5")
    assert by_size["3c × 1.5 mm² XLPE/SWA/PVC"][1:4] == ("12.6", "7.8", "20S")
    assert (
        sum(int(n) for row in subject.table.rows for n in re.findall(r"\d+", row[8])) == 2 * 13
    )  # thirteen armoured cables
    bare = dataclasses.replace(model, results=dataclasses.replace(model.results, cables={}))
    unknown = armoured_ends(bare)
    assert unknown is not None
    assert all("not recorded" in row for row in unknown.table.rows)


def test_the_balun_of_three_cores_each_way_uses_no_spare(demo_models: Models) -> None:
    subject = camera_ends(demo_models["pottery-studio"])
    assert subject is not None
    figure = next(f for f in subject.figures if "3 + 3" in getattr(f, "title", ""))
    words = said(figure.draw(AT, "A3"))
    assert words.count("12 V +") == words.count("12 V −") == 6  # three cores, two ends
    assert "spare" not in words


def test_tags_that_do_not_fit_are_counted_not_dropped() -> None:
    tags = [f"X{n}" for n in range(1, 60)]
    lines = tag_lines(tags, 80.0, 2)
    assert len(lines) <= 2
    assert all(fits(line, 80.0, BODY) for line in lines)
    shown = " ".join(lines).count("X")
    assert f"and {59 - shown} more" in " ".join(lines)


def test_figures_are_numbered_through_all_details_of_a_job(demo_models: Models) -> None:
    numbers = []
    for _, _, items in built(demo_models["pottery-studio"]):
        for item in items:
            if item.ident.endswith(":title") and isinstance(item.parts[0], Text):
                found = re.match(r"(\d+) ", item.parts[0].text)
                numbers += [int(found[1])] if found else []
    assert numbers == list(range(1, len(numbers) + 1))
    assert len(numbers) >= 8


def test_each_item_of_a_figure_belongs_to_a_thing_and_leads_to_its_row(
    demo_sheets: dict[str, tuple[SheetLayout, ...]], demo_models: Models
) -> None:
    model = demo_models["pottery-studio"].installation
    tags = {*model.points, *model.data_devices, *model.cables}
    sheets = demo_sheets["pottery-studio"]
    rows = {f"{s.number}#{i.ident}" for s in sheets for i in s.items}
    seen = set()
    for sheet in (s for s in sheets if s.key.startswith("details")):
        for item in sheet.items:
            owner = item.ident.partition(":")[0]
            if item.kind in ("wire", "symbol") and owner != "legend":
                assert owner in tags, item.ident
                assert item.title, item.ident
                assert item.link in rows, item.ident
                seen.add(owner)
            if item.ident.startswith("details:table:"):
                assert item.link in rows, item.ident
    assert {"X1", "Q1", "CAM3", "W05"} <= seen


def test_figures_of_a_row_have_equal_pitch_or_equal_gaps() -> None:
    from asfitted.layout.details.arranging import arranged  # noqa: PLC0415 - beside what it tests

    room, title = Box(25, 40, 405, 282), Box(230, 235, 410, 287)
    alike = tuple(IsolatorFigure("q", n, ("Q1",), FOUR_CORE, FOUR_CORE, 4, "", is_motor=True)
                  for n in (1, 2, 3))  # fmt: skip
    found = arranged(alike, (), room, title)
    assert found is not None
    xs = [at.x for at in found.figures]
    assert xs[0] == room.x0
    assert xs[1] - xs[0] == pytest.approx(xs[2] - xs[1])
    assert len({at.y for at in found.figures}) == 1
    unlike = (FaceFigure("f", 1, ("X1",), 400.0), *alike[:2])
    found = arranged(unlike, (), room, title)
    assert found is not None
    for one, other in itertools.combinations(zip(unlike, found.figures, strict=True), 2):
        boxes = [Box(at.x, at.y, at.x + f.width_mm, at.y + f.height_mm) for f, at in (one, other)]
        assert not boxes[0].meets(boxes[1])
