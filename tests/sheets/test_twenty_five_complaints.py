"""What people complain of in the papers of electrical jobs, each made a test of the demo jobs.

A complaint that is held up elsewhere is only named here, with the tests that hold it:

- "What was called as fitted was never looked at on site":
  ``test_as_fitted_needs_checker_date_and_what_was_not_seen``,
  ``test_an_as_fitted_issue_without_answers_fails_and_says_so_on_its_sheets``.
- "The boxes of the test sheet are empty and nobody says why":
  ``test_no_measured_cell_is_ever_filled_in``,
  ``test_a_reason_stands_for_a_reading_that_was_not_taken``, rule TR-07 with its cases.
- "The lengths along the wall do not add up": ``test_chains_sum_exactly``,
  ``test_both_sides_of_a_corner_say_the_same``, ``test_cut_lengths_add_up``.
- "The drawing says one size and the schedule another": ``tests/pack/test_everything_agrees.py``.
- "No one can tell what changed": ``tests/layout/revision``, ``tests/compare``.
- "It says to be confirmed, and the job is finished": rule AF-02,
  ``test_no_sheet_of_an_as_fitted_issue_leaves_anything_open``.
- "I cannot search the PDF": ``test_text_is_searchable_in_two_readers``.
- "The same dimension stands twice":
  ``test_a_dimension_stands_on_the_view_or_its_detail_never_on_both``.
"""

from __future__ import annotations

import itertools
import re
from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING

import pytest
import test_every_sheet as every_sheet
from sheet_words import items_of, said, words_by_ident

from asfitted.check.run import run_checks
from asfitted.draw.ink import TONES
from asfitted.draw.item_boxes import part_box
from asfitted.draw.svg import SvgOptions, write_svg
from asfitted.geometry import Box, Point
from asfitted.layout.lettering import TAG
from asfitted.layout.schedule.cable_schedule import COLUMNS, cable_schedule
from asfitted.layout.sheet_layout import Path as Line
from asfitted.layout.sheet_layout import SymbolUse, Text
from asfitted.layout.single_line.signs import ABBREVIATIONS
from asfitted.pack.design_json import design_json

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
#: Words that name a kind of thing and not which one.
VAGUE = {"lights", "lighting", "sockets", "socket-outlets", "power", "heating", "heater", "spare"}


def without(sheets: Sheets, ident: str) -> Sheets:
    """Return the sheets with one thing rubbed out."""
    left = tuple(
        replace(sheet, items=tuple(i for i in sheet.items if i.ident != ident)) for sheet in sheets
    )
    assert left != sheets, ident
    return left


def reworded(sheets: Sheets, ident: str, change: Callable[[str], str]) -> Sheets:
    """Return the sheets with the words of one thing changed."""

    def other(item: Item) -> Item:
        if item.ident != ident:
            return item
        parts = (replace(p, text=change(p.text)) if isinstance(p, Text) else p for p in item.parts)
        return replace(item, parts=tuple(parts))

    changed = tuple(replace(s, items=tuple(other(i) for i in s.items)) for s in sheets)
    assert changed != sheets, ident
    return changed


def vague_rows(model: Model, sheets: Sheets) -> list[str]:
    rows = words_by_ident(sheets, "door-chart")
    faults = []
    for circuit in model.installation.circuits.values():
        row = rows.get(f"door-chart/{circuit.board}:{circuit.way}", "")
        told = row.partition(circuit.name)[2].removeprefix(" (existing)")
        place = re.match(r": (?!not recorded)\S+", told)
        if not place or (circuit.name.lower() in VAGUE and not circuit.place and not place):
            faults.append(f"{circuit.tag}: {row}")
    return faults


@pytest.mark.parametrize("job", WITH_POWER)
def test_circuits_have_a_name_and_a_place(every_job: Jobs, job: str) -> None:
    """The chart says "lights, lights, sockets": nothing can be found by it."""
    model, sheets = every_job[job]
    assert not vague_rows(model, sheets)
    circuit = next(iter(model.installation.circuits.values()))
    ident = f"door-chart/{circuit.board}:{circuit.way}"
    assert vague_rows(model, reworded(sheets, ident, lambda words: words.partition(":")[0]))


def test_a_vague_name_without_a_place_is_a_finding(every_job: Jobs) -> None:
    """The chart says "sockets", and no one knows which: the check tells it before printing."""
    model, _ = every_job["community-shed"]
    installation = model.installation
    vague = replace(installation.circuits["CU1/1"], name="Sockets", place="")
    circuits = MappingProxyType({**installation.circuits, "CU1/1": vague})
    report = run_checks(replace(installation, circuits=circuits), model.results)
    assert any(f.rule == "BD-06" and f.subject == "CU1/1" for f in report.findings)
    assert not any(f.rule == "BD-06" and f.subject == "CU1/1" for f in model.report.findings)


def unlabelled_ways(model: Model, sheets: Sheets) -> list[str]:
    faults = []
    for board in model.installation.boards.values():
        head = f"door-chart/{board.tag}:"
        rows = {
            item.ident: said(item).split()
            for _, item in items_of(sheets, f"door-chart/{board.tag}")
            if item.ident.startswith(head) and ":note:" not in item.ident
        }
        told = [w.rstrip(",") for row in rows.values() for w in itertools.takewhile(_is_way, row)]
        faults += [f"{board.tag}/{way.name}" for way in board.ways if told.count(way.name) != 1]
    return faults


def _is_way(word: str) -> bool:
    return re.fullmatch(r"\d+(L\d|TP)?,?", word) is not None


@pytest.mark.parametrize("job", WITH_POWER)
def test_every_way_of_every_board_stands_in_its_chart_once(every_job: Jobs, job: str) -> None:
    """Hours are lost looking for what a way feeds, because it is not on the list."""
    model, sheets = every_job[job]
    assert not unlabelled_ways(model, sheets)
    board = next(iter(model.installation.boards.values()))
    way = next(w for w in board.ways if w.circuit)
    lost = without(sheets, f"door-chart/{board.tag}:{way.name}")
    assert unlabelled_ways(model, lost) == [f"{board.tag}/{way.name}"]


def loads_without_a_circuit(model: Model, sheets: Sheets) -> list[str]:
    texts = words_by_ident(sheets, "single-line")
    faults = []
    for circuit in model.installation.circuits.values():
        names = " ".join(w for i, w in texts.items() if re.match(rf"{circuit.tag}:\d+:tags$", i))
        if f"{circuit.tag}:name" not in texts or f"{circuit.tag}:rating" not in texts:
            faults.append(circuit.tag)
        faults += [tag for tag in circuit.points if tag not in _expanded(names)]
    return faults


def _expanded(words: str) -> set[str]:
    """Return the tags in "S1, S2" and "S1 to S5"."""
    tags = set(re.findall(r"[A-Z]+\d+", words))
    for stem, first, last in re.findall(r"([A-Z]+)(\d+) to \1(\d+)", words):
        tags |= {f"{stem}{n}" for n in range(int(first), int(last) + 1)}
    return tags


@pytest.mark.parametrize("job", WITH_POWER)
def test_every_load_of_the_diagram_hangs_on_a_named_circuit(every_job: Jobs, job: str) -> None:
    """The inspector meets circuits that no paper knows."""
    model, sheets = every_job[job]
    assert not loads_without_a_circuit(model, sheets)
    circuit = next(c for c in model.installation.circuits.values() if c.points)
    tags = next(
        i.ident
        for _, i in items_of(sheets, "single-line")
        if re.match(rf"{circuit.tag}:\d+:tags$", i.ident)
    )
    assert loads_without_a_circuit(model, without(sheets, tags))


@pytest.mark.parametrize("job", EVERY)
def test_the_set_holds_a_list_and_all_that_is_on_it(every_job: Jobs, job: str) -> None:
    """There are no installation records, says the report."""
    _, sheets = every_job[job]
    listed = [i.ident for _, i in items_of(sheets, "drawing-list") if i.link]
    assert sorted(listed) == sorted(f"sheets:{sheet.key}" for sheet in sheets)


@pytest.mark.parametrize("job", WITH_POWER)
def test_every_board_has_a_chart_that_fits_its_door(every_job: Jobs, job: str) -> None:
    """The circuits are in a report in the office, and the door of the board is bare."""
    model, sheets = every_job[job]
    for tag in model.installation.boards:
        charts = [sheet for sheet in sheets if sheet.key.startswith(f"door-chart/{tag}")]
        assert charts, tag
        assert all(sheet.paper.startswith("A4") for sheet in charts)
        assert all("client" in sheet.readers for sheet in charts)


@pytest.mark.parametrize("job", EVERY)
def test_every_cable_has_a_way_it_runs(every_job: Jobs, job: str) -> None:
    """The chart says which breaker, but not where the cable runs."""
    model, _ = every_job[job]
    table = cable_schedule(model)
    column = [c.header for c in COLUMNS].index("Runs in")
    for row in table.rows:
        measured = model.installation.cables[row[0]].measured_length_m is not None
        assert row[column] not in {"", "no route found"}, row[0]
        assert measured or row[column] != "not recorded", row[0]
    tag = table.rows[0][0]
    lost = replace(model.results.routes[tag], legs=(), broken="no way")
    routes = MappingProxyType({**model.results.routes, tag: lost})
    broken = replace(model, results=replace(model.results, routes=routes))
    assert cable_schedule(broken).rows[0][column] == "no route found"


@pytest.mark.parametrize("job", EVERY)
def test_a_job_with_boards_has_its_single_line_diagram(every_job: Jobs, job: str) -> None:
    """Of the whole place there is no single-line diagram."""
    model, sheets = every_job[job]
    drawn = " ".join(sheet.title for sheet in sheets if sheet.key.startswith("single-line"))
    for tag in model.installation.boards:
        assert re.search(rf"\b{tag}\b", drawn), tag
    assert bool(drawn) == bool(model.installation.boards)


@pytest.mark.parametrize("job", EVERY)
def test_the_manual_asks_for_the_leaflets_of_what_is_fitted_only(every_job: Jobs, job: str) -> None:
    """A crate of makers' leaflets, most of them for things that are not there."""
    _, sheets = every_job[job]
    told = " ".join(words_by_ident(sheets, "operation-and-maintenance").values())
    assert "leaflets belong to this part only for the models fitted" in told


@pytest.mark.parametrize("job", EVERY)
def test_the_works_are_described_and_the_client_has_one_page(every_job: Jobs, job: str) -> None:
    """Nothing says in plain words what was done."""
    model, sheets = every_job[job]
    assert sum(sheet.key == "client-summary" for sheet in sheets) == 1
    told = " ".join(words_by_ident(sheets, "description").values())
    for heading in ("Extent of the works", "Not included", "Supply and earthing", "Departures"):
        assert heading in told
    description = model.installation.job.description
    assert " ".join(description.split())[:40] in told or "Description: not recorded" in told
    pages = [sheet for sheet in sheets if sheet.key.startswith("description")]
    assert len(pages) <= 3 if job in LARGE else 2


@pytest.mark.parametrize("job", EVERY)
def test_everything_drawn_on_a_plan_is_in_a_schedule(every_job: Jobs, job: str) -> None:
    """The list of equipment is thin, and half of what hangs there is not on it."""
    _, sheets = every_job[job]
    drawn = {
        i.ident.removeprefix("plan-tag:")
        for _, i in items_of(sheets, "key-plan", "floor-plan")
        if i.ident.startswith("plan-tag:")
    }
    assert len(drawn) > 3
    assert not _unlisted(drawn, sheets)
    tag = next(t for t in sorted(drawn) if not t.startswith("CAM"))
    assert _unlisted(drawn, without(sheets, f"equipment-schedule:{tag}")) == {tag}


def _unlisted(drawn: set[str], sheets: Sheets) -> set[str]:
    rows = words_by_ident(sheets, "equipment-schedule", "camera-schedule")
    return drawn - {ident.partition(":")[2] for ident in rows}


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


TITLE_FIELDS = (
    "title",
    "number",
    "revision, sheet",
    "status",
    "scale",
    "date of issue",
    "drawn for",
    "site",
    "by, to call",
    "document",
    "designed / checked on site by",
)


def open_titles(sheets: Iterable[SheetLayout]) -> list[str]:
    faults = []
    for sheet in sheets:
        block = {i.ident: said(i).strip() for i in sheet.items if i.ident.startswith("title-block")}
        fields = [f"title-block:{field}" for field in TITLE_FIELDS]
        faults += [f"{sheet.name} {field}" for field in fields if not block.get(field)]
        scale = block.get("title-block:scale", "")
        if not re.match(r"1:\d+ @ A\d|Not to scale|No scale|[Aa]s (stated|shown)", scale):
            faults.append(f"{sheet.name}: scale {scale!r}")
    return faults


@pytest.mark.parametrize("job", EVERY)
def test_every_field_of_the_title_is_filled(every_job: Jobs, job: str) -> None:
    """A sheet without scale, number or name of the job lies about, and nobody knows whose."""
    _, sheets = every_job[job]
    assert not open_titles(sheets)
    for field in ("scale", "number"):
        assert open_titles(without(sheets, f"title-block:{field}"))


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


def unfed(model: Model) -> list[str]:
    """Return loads that do not reach the supply by exactly one way."""
    job = model.installation
    faults = []
    for circuit in job.circuits.values():
        fed = {circuit.board}
        ends = [job.cables[tag] for tag in circuit.cables]
        for cable in ends:
            if cable.from_end not in fed:
                faults.append(f"{cable.tag} begins at {cable.from_end}, which nothing feeds")
            fed.add(cable.to_end)
        if ends:
            arrivals = [cable.to_end for cable in ends if cable.to_end != circuit.board]
            faults += [t for t in circuit.points if arrivals.count(t) != 1]
    for tag in job.boards:
        chain = [tag]
        while (feed := job.boards[chain[-1]].fed_by) != "supply" and len(chain) <= len(job.boards):
            chain.append(job.circuits[feed].board)
        if len(set(chain)) != len(chain):
            faults.append(f"{tag} feeds itself")
    return faults


@pytest.mark.parametrize("job", WITH_POWER)
def test_every_load_goes_back_to_one_source(every_job: Jobs, job: str) -> None:
    """A run is drawn from lamp to lamp, and nothing shows how it gets back to the board."""
    model, _ = every_job[job]
    assert not unfed(model)
    circuit = next(c for c in model.installation.circuits.values() if len(c.cables) > 1)
    shorter = replace(circuit, cables=circuit.cables[1:])
    circuits = MappingProxyType({**model.installation.circuits, circuit.tag: shorter})
    assert unfed(replace(model, installation=replace(model.installation, circuits=circuits)))


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


@pytest.mark.parametrize("job", ["pottery-studio", "shop-cctv", *LARGE])
def test_every_camera_says_what_it_sees_and_where_its_picture_goes(
    every_job: Jobs, job: str
) -> None:
    """Nobody wrote down which camera is on which channel; each new person finds it out again."""
    model, sheets = every_job[job]
    rows = words_by_ident(sheets, "camera-schedule")
    cameras = [d for d in model.installation.data_devices.values() if d.kind == "camera"]
    assert cameras
    for camera in cameras:
        row = rows[f"camera-schedule:{camera.tag}"]
        link = model.results.data[camera.tag]
        for wanted in (camera.views, f"channel {camera.channel}", link.cable):
            assert wanted in row, f"{camera.tag}: {wanted}"


def labels_lost(model: Model, sheets: Sheets) -> list[str]:
    texts = words_by_ident(sheets, "labels")
    new = [c for c in model.installation.cables.values() if c.state == "new"]
    found = {c.tag: [w for i, w in texts.items() if i.startswith(f"label:{c.tag}@")] for c in new}
    return [t for t, w in found.items() if len(w) != 2 or not all(x.startswith(f"{t} ") for x in w)]


@pytest.mark.parametrize("job", EVERY)
def test_every_cable_has_a_label_for_each_end(every_job: Jobs, job: str) -> None:
    """In the board there are forty cables, and none has a name."""
    model, sheets = every_job[job]
    assert not labels_lost(model, sheets)
    cable = next(c for c in model.installation.cables.values() if c.state == "new")
    one = f"label:{cable.tag}@{cable.to_end}:1"
    assert labels_lost(model, without(sheets, one)) == [cable.tag]


@pytest.mark.parametrize("job", EVERY)
def test_every_sheet_and_its_file_bear_the_revision(every_job: Jobs, job: str) -> None:
    """Old and new prints lie together on the bench."""
    model, sheets = every_job[job]
    revision = model.installation.job.revision
    for sheet in sheets:
        assert f"-{sheet.number}-{revision}-" in sheet.name
        block = {i.ident: said(i) for i in sheet.items if i.ident.startswith("title-block")}
        assert block["title-block:revision, sheet"].startswith(f"{revision}, ")
        newest = block.get("title-block:revision", revision)  # small sheets have no such row
        assert newest.startswith(revision), sheet.name


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


@pytest.mark.parametrize("job", EVERY)
def test_no_password_is_ever_printed(every_job: Jobs, job: str) -> None:
    """The password of the recorder went round with the drawings."""
    model, sheets = every_job[job]
    figures = design_json(model.installation, model.results, model.report).lower()
    printed = " ".join(said(item) for sheet in sheets for item in sheet.items).lower()
    for word in ("password:", "pass word", "passcode", "pin code", "user name:"):
        assert word not in figures
        assert word not in printed


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
