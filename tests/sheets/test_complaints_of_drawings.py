"""What people complain of in electrical drawings, each made a test of the demo jobs.

Complaints of the papers beside them stand in ``test_twenty_five_complaints.py``.
"""

from __future__ import annotations

import itertools
import re
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
import test_every_sheet as every_sheet
from sheet_words import items_of, said, without, words_by_ident

from asfitted.draw.ink import TONES
from asfitted.draw.item_boxes import part_box
from asfitted.draw.svg import SvgOptions, write_svg
from asfitted.geometry import Box, Point
from asfitted.layout.lettering import TAG
from asfitted.layout.sheet_layout import Path as Line
from asfitted.layout.sheet_layout import SymbolUse, Text
from asfitted.layout.single_line.signs import ABBREVIATIONS

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from asfitted.layout.sheet_layout import Item, SheetLayout
    from asfitted.layout.sheet_model import Model

    Sheets = tuple[SheetLayout, ...]
    Jobs = dict[str, tuple[Model, Sheets]]

LARGE = ("community-hall", "two-storey-office")
WITH_POWER = ("pottery-studio", "community-shed", *LARGE)
EVERY = (*WITH_POWER, "shop-cctv")
DIAGRAMS = ("single-line", "distribution-overview", "data-diagram")
NEAR_MM = 15.0


@pytest.mark.parametrize("job", LARGE)
@pytest.mark.parametrize(
    "holds",
    [
        every_sheet.test_the_legend_is_exactly_what_is_used,
        every_sheet.test_lettering_is_never_smaller_than_it_may_be,
        every_sheet.test_no_text_stands_on_another,
        every_sheet.test_everything_but_the_frame_lies_inside_the_frame,
        every_sheet.test_every_sheet_carries_frame_title_and_caution,
        every_sheet.test_items_have_names_of_their_own,
        every_sheet.test_wires_carry_a_net_and_nothing_else_is_called_a_wire,
    ],
)
def test_what_holds_on_small_jobs_holds_on_large_ones(
    every_job: Jobs, job: str, holds: Callable[[dict[str, Sheets], str], None]
) -> None:
    """The legend is not that of the sheet; words are too small or stand on others."""
    holds({job: every_job[job][1]}, job)


@pytest.mark.parametrize("job", EVERY)
def test_tags_on_drawings_can_be_read_at_arm_s_length(every_job: Jobs, job: str) -> None:
    """Printed smaller, the tags cannot be read."""
    # 2.5 mm for words, 3.5 mm for tags: ISO 3098 series (memory)
    tags = 0
    for _, item in items_of(every_job[job][1], *DIAGRAMS, "key-plan", "floor-plan"):
        is_tag = re.search(r"^plan-tag:|^(?!feed:).*:(way|tag|tags)$", item.ident)
        if is_tag and item.kind == "text":
            head = next(p for p in item.parts if isinstance(p, Text))
            if head.text.isdigit() and item.ident.startswith("plan-tag:"):
                continue  # the number of a keynote, in its ring
            assert head.cap_mm >= TAG, item.ident
            tags += 1
    assert tags > 3


@pytest.mark.parametrize("job", EVERY)
def test_a_sheet_is_to_scale_and_has_a_bar_or_says_that_it_is_not(
    every_job: Jobs, job: str
) -> None:
    """Lengths were taken off a drawing that was not to scale."""
    scaled = 0
    for sheet in every_job[job][1]:
        (scale,) = [said(i) for i in sheet.items if i.ident == "title-block:scale"]
        bars = [i for i in sheet.items if re.search(r"(^|:)(scale-)?bar(:\d+)?$", i.ident)]
        if re.match(r"1:\d+", scale):
            scaled += 1
            assert bars, f"{sheet.name}: {scale}"
        elif sheet.section == "Drawings" and sheet.key.startswith(DIAGRAMS):
            assert scale.startswith("Not to scale"), sheet.name
    assert scaled


def segments(item: Item) -> Iterator[Box]:
    for part in item.parts:
        if isinstance(part, Line):
            for a, b in itertools.pairwise(part.points):
                yield Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y))


def wires_through_signs(sheets: Iterable[SheetLayout]) -> list[str]:
    """Return lines that enter the box of a sign and leave it again: they run through it."""
    faults = []
    for sheet in sheets:
        signs = [
            (item.ident, part_box(part).grown(-1.0))
            for item in sheet.items
            if item.kind == "symbol" and not item.ident.startswith("legend:")
            for part in item.parts
            if isinstance(part, SymbolUse)
        ]
        for wire in (item for item in sheet.items if item.kind == "wire"):
            for line, (ident, box) in itertools.product(segments(wire), signs):
                level = line.y0 == line.y1 and line.x0 < box.x0 and line.x1 > box.x1
                upright = line.x0 == line.x1 and line.y0 < box.y0 and line.y1 > box.y1
                if (level or upright) and line.meets(box):
                    faults.append(f"sheet {sheet.number}: {wire.ident} through {ident}")
    return faults


@pytest.mark.parametrize("job", EVERY)
def test_no_line_runs_through_a_sign_or_across_another(every_job: Jobs, job: str) -> None:
    """Lines cross each other and run through lamps."""
    sheets = [sheet for sheet in every_job[job][1] if sheet.key.startswith(DIAGRAMS)]
    assert not wires_through_signs(sheets)
    crossings = 0
    for sheet in sheets:
        wires = [i for i in sheet.items if i.kind == "wire"]
        for one, two in itertools.combinations(wires, 2):
            if one.net != two.net:
                crossings += sum(a.meets(b) for a in segments(one) for b in segments(two))
    assert crossings == 0
    assert wires_through_signs([_with_a_line_through_a_sign(sheets[0])])


def _with_a_line_through_a_sign(sheet: SheetLayout) -> SheetLayout:
    use = next(
        p
        for i in sheet.items
        if i.kind == "symbol" and not i.ident.startswith("legend:")
        for p in i.parts
        if isinstance(p, SymbolUse)
    )
    wire = next(i for i in sheet.items if i.kind == "wire")
    line = next(p for p in wire.parts if isinstance(p, Line))
    y = use.at.y + use.size_mm / 2
    ends = (Point(use.at.x - 20, y), Point(use.at.x + 20, y))
    across = replace(wire, ident="drawn in anger", parts=(replace(line, points=ends),))
    return replace(sheet, items=(*sheet.items, across))


def loose_ends(sheet: SheetLayout) -> list[str]:
    """Return ends of lines that meet no sign, busbar, flag, edge or other line."""
    met = [
        (item.ident, part_box(part).grown(0.6))
        for item in sheet.items
        if item.kind in {"symbol", "busbar", "flag", "wire", "outline", "dim"}
        for part in item.parts
    ]
    faults = []
    for item in sheet.items:
        for line in (p for p in item.parts if item.kind == "wire" and isinstance(p, Line)):
            for end in (line.points[0], line.points[-1]):
                at = Box(end.x, end.y, end.x, end.y)
                if not any(box.meets(at) for ident, box in met if ident != item.ident):
                    faults.append(f"sheet {sheet.number}: {item.ident} ends in the air")
    return faults


@pytest.mark.parametrize("job", EVERY)
def test_no_line_ends_in_the_air(every_job: Jobs, job: str) -> None:
    """A line stops on the paper, and where it goes is anyone's guess."""
    sheets = [sheet for sheet in every_job[job][1] if sheet.key.startswith(DIAGRAMS)]
    for sheet in sheets:
        assert not loose_ends(sheet)
    bare = {"symbol", "flag", "outline"}
    cleared = [replace(s, items=tuple(i for i in s.items if i.kind not in bare)) for s in sheets]
    assert any(loose_ends(sheet) for sheet in cleared)


def unrated(sheets: Iterable[SheetLayout]) -> list[str]:
    """Return devices, busbars and cables whose rating or size is further off than 15 mm."""
    faults = []
    for sheet in sheets:
        boxes = {
            item.ident: [part_box(part) for part in item.parts]
            for item in sheet.items
            if item.parts
        }
        for ident, drawn in boxes.items():
            told = _told_by(ident)
            if told is None or ident.startswith("legend:"):
                continue
            near = [box.grown(NEAR_MM) for box in drawn]
            words = [box for name in told for box in boxes.get(name, [])]
            if not any(one.meets(other) for one in near for other in words):
                faults.append(f"sheet {sheet.number}: {ident}")
    return faults


def _told_by(ident: str) -> tuple[str, ...] | None:
    """Return what tells the rating of a thing on the diagram, or None for other things."""
    head, _, last = ident.rpartition(":")
    return {
        "device": (f"{head}:rating",),
        "switch": (f"{head}:switch:words",),
        "line": (f"{head}:cable",),
        "busbar": (f"{head}:label:facts", f"{head}:switch:words", f"{head}:label"),
    }.get(last)


@pytest.mark.parametrize("job", WITH_POWER)
def test_every_device_busbar_and_cable_has_its_rating_beside_it(every_job: Jobs, job: str) -> None:
    """The main board is drawn in full, and the ratings are left off."""
    model, sheets = every_job[job]
    diagram = tuple(sheet for sheet in sheets if sheet.key.startswith("single-line"))
    assert not unrated(diagram)
    texts = words_by_ident(diagram, "single-line")
    for circuit in model.installation.circuits.values():
        assert re.search(r"\d", texts[f"{circuit.tag}:rating"])
    tag = next(iter(model.installation.circuits))
    assert unrated(without(diagram, f"{tag}:rating"))


@pytest.mark.parametrize("job", EVERY)
def test_no_height_stands_without_what_it_is_measured_to(every_job: Jobs, job: str) -> None:
    """The height is "standard", or a figure that may be to the top or to the middle."""
    heights = 0
    for sheet, item in items_of(every_job[job][1], "elevation/"):
        if re.search(r"(^|:)(callout|level|run-tag):", item.ident):
            for found in re.finditer(r"\+\d{3,4}\b", said(item)):
                before = said(item)[: found.start()]
                measured = re.search(r"(C/L|T/O|U/S|FFL|ceiling|from|to|wall|sill|head) $", before)
                assert measured, f"sheet {sheet.number} {item.ident}: {said(item)}"
                heights += 1
    assert heights > 10


def test_no_colour_is_ever_needed() -> None:
    """Printed in black and white, half of the drawing is gone."""
    for tone in TONES.values():
        assert len({tone[1:3], tone[3:5], tone[5:7]}) == 1, f"{tone} is a colour"


@pytest.mark.parametrize("job", WITH_POWER)
def test_abbreviations_of_the_diagram_are_written_out(every_job: Jobs, job: str) -> None:
    """It is full of letters that no legend explains."""
    _, sheets = every_job[job]
    assert not _unexplained(sheets)
    notes = {i.ident for _, i in items_of(sheets, *DIAGRAMS[:2]) if i.ident.startswith("notes:7")}
    for ident in notes:
        sheets = without(sheets, ident)
    assert _unexplained(sheets)


def _unexplained(sheets: Sheets) -> set[str]:
    notes, drawn = "", ""
    for _, item in items_of(sheets, *DIAGRAMS[:2]):
        if item.ident.startswith(("notes:", "legend:")):
            notes += f" {said(item)}"
        else:
            drawn += f" {said(item)}"
    used = {
        s for s, _ in ABBREVIATIONS if re.search(rf"(?<![\w+&]){re.escape(s)}(?![\w+&])", drawn)
    }
    written_out = dict(ABBREVIATIONS)
    return {short for short in used if f"{short} {written_out[short]}" not in notes}


def test_words_stand_level_or_read_from_the_right(every_job: Jobs) -> None:
    """To read it one has to turn one's head every way."""
    turned = 0
    for sheet in every_job["pottery-studio"][1][:40]:
        for angle in re.findall(
            r"<text[^>]*rotate\((-?[\d.]+)", write_svg(sheet, SvgOptions(embed_fonts=False))
        ):
            assert float(angle) == -90.0, sheet.name
            turned += 1
    assert turned


@pytest.mark.parametrize("job", WITH_POWER)
def test_the_earthing_of_the_installation_is_drawn(every_job: Jobs, job: str) -> None:
    """The drawing does not say how the place is earthed."""
    model, sheets = every_job[job]
    supply = model.installation.supply
    assert supply is not None
    drawn = {i.ident: i for s in sheets if s.key.startswith(DIAGRAMS) for i in s.items}
    assert "met" in drawn
    assert "earthing conductor" in " ".join(said(item) for item in drawn.values())
    assert supply.system in said(drawn["supply:terminal:words"])
    bonds = [ident for ident in drawn if ident.startswith("met:bond:") and ident.endswith(":words")]
    assert bonds


def test_existing_work_is_told_from_new(every_job: Jobs) -> None:
    """One cannot see what was there before."""
    model, sheets = every_job["pottery-studio"]
    items = {i.ident: i for s in sheets if s.key.startswith("single-line") for i in s.items}
    states = {"existing": set[float](), "new": set[float]()}
    for circuit in model.installation.circuits.values():
        line = items[f"{circuit.tag}:1:line"]
        widths = {p.stroke.width_mm for p in line.parts if isinstance(p, Line) and p.stroke}
        states[circuit.state] |= widths
        is_marked = "existing" in said(items[f"{circuit.tag}:1:cable"])
        assert is_marked == (circuit.state == "existing"), circuit.tag
    assert max(states["existing"]) < min(states["new"])


def lonely_flags(sheets: Sheets) -> list[str]:
    """Return flags whose other end is not there or does not lead back.

    At the corner of two walls the other end is the arrow of the run: its words may stand in a
    detail. An entry of the overview ("ways: sheet 12") is no end of a line.
    """
    found = {(s.number, i.ident): i for s in sheets for i in s.items}
    faults = []
    for (number, ident), item in found.items():
        other, _, target = item.link.partition("#")
        if not target or ident.startswith("ways:"):
            continue
        if re.search(r"(^|:)flag:", ident):
            arrow = re.sub(r"(^|:)flag:", r"\1corner:", target)
            if (other, arrow) not in found:
                faults.append(f"sheet {number}: {ident} leads to {item.link}: no arrow there")
        elif item.kind == "flag":
            twin = found.get((other, target))
            if twin is None or twin.link != f"{number}#{ident}":
                faults.append(f"sheet {number}: {ident} leads to {item.link}, and nothing back")
    return faults


@pytest.mark.parametrize("job", EVERY)
def test_every_flag_has_its_twin(every_job: Jobs, job: str) -> None:
    """It says "goes on elsewhere", and elsewhere it never comes in."""
    _, sheets = every_job[job]
    assert not lonely_flags(sheets)
    flag = next(i for s in sheets for i in s.items if "#" in i.link and ":flag:" in f":{i.ident}")
    target = re.sub(r"(^|:)flag:", r"\1corner:", flag.link.partition("#")[2])
    assert lonely_flags(without(sheets, target))
