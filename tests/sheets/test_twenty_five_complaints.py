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
- Complaints of how it is drawn: ``test_complaints_of_drawings.py``.
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
from sheet_words import items_of, reworded, said, without, words_by_ident

from asfitted.check.run import run_checks
from asfitted.layout.schedule.cable_schedule import COLUMNS, cable_schedule
from asfitted.pack.design_json import design_json

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

    Sheets = tuple[SheetLayout, ...]
    Jobs = dict[str, tuple[Model, Sheets]]

LARGE = ("community-hall", "two-storey-office")
WITH_POWER = ("pottery-studio", "community-shed", *LARGE)
EVERY = (*WITH_POWER, "shop-cctv")


def vague_rows(model: Model, sheets: Sheets) -> list[str]:
    rows = words_by_ident(sheets, "door-chart")
    faults = []
    for circuit in model.installation.circuits.values():
        row = rows.get(f"door-chart/{circuit.board}:{circuit.way}", "")
        told = row.partition(circuit.name)[2].removeprefix(" (existing)")
        if not re.match(r": (?!not recorded)\S+", told):
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
    rows = [said(i) for _, i in items_of(sheets, "drawing-list") if i.link]
    spans = [re.match(r"(\d+)(?: to (\d+))?", row).groups() for row in rows]
    listed = [n for first, last in spans for n in range(int(first), int(last or first) + 1)]
    assert listed == [int(sheet.number) for sheet in sheets]


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

#: Of plain paper, such as label stock, which has one line at its foot.
FOOT_FIELDS = ("title", "number", "revision, sheet", "status", "scale", "date of issue")
SCALES = r"1:\d+ @ A\d|Not to scale|No scale|[Aa]s (stated|shown)|Print at full size"


def open_titles(sheets: Iterable[SheetLayout]) -> list[str]:
    faults = []
    for sheet in sheets:
        block = {i.ident: said(i).strip() for i in sheet.items if i.ident.startswith("title-block")}
        named = FOOT_FIELDS if sheet.key.startswith("labels/") else TITLE_FIELDS
        fields = [f"title-block:{field}" for field in named]
        faults += [f"{sheet.name} {field}" for field in fields if not block.get(field)]
        scale = block.get("title-block:scale", "")
        if not re.match(SCALES, scale):
            faults.append(f"{sheet.name}: scale {scale!r}")
    return faults


@pytest.mark.parametrize("job", EVERY)
def test_every_field_of_the_title_is_filled(every_job: Jobs, job: str) -> None:
    """A sheet without scale, number or name of the job lies about, and nobody knows whose."""
    _, sheets = every_job[job]
    assert not open_titles(sheets)
    for field in ("scale", "number"):
        assert open_titles(without(sheets, f"title-block:{field}"))


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


@pytest.mark.parametrize("job", EVERY)
def test_no_password_is_ever_printed(every_job: Jobs, job: str) -> None:
    """The password of the recorder went round with the drawings."""
    model, sheets = every_job[job]
    figures = design_json(model.installation, model.results, model.report).lower()
    printed = " ".join(said(item) for sheet in sheets for item in sheet.items).lower()
    for word in ("password:", "pass word", "passcode", "pin code", "user name:"):
        assert word not in figures
        assert word not in printed
