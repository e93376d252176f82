"""The text pages of the handover: what must be on them, and what must never be filled in."""

from __future__ import annotations

import re
from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING

import pytest

from asfitted.layout.document.assumptions import defaults_in_use
from asfitted.layout.schedule.board_readings import board_readings
from asfitted.layout.schedule.circuit_details import circuit_details
from asfitted.layout.schedule.circuit_readings import COLUMNS, circuit_readings
from asfitted.layout.sheet_layout import READERS, Text
from asfitted.resolve import readings as r

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

    Sheets = dict[str, tuple[SheetLayout, ...]]
    Models = dict[str, Model]

JOBS = ("pottery-studio", "community-shed", "shop-cctv")
WITH_BOARDS = ("pottery-studio", "community-shed")
#: Words a client should not have to know.
JARGON = ("Zs", "Ze", "Ipf", "ADS", "cpc", "MCB", "RCBO", "diversity", "disconnection", "TN-C-S")
MEASURED = [each.column.header for each in COLUMNS if each.measured]


def words(sheets: tuple[SheetLayout, ...], name: str) -> str:
    """Return everything said on the sheets of a kind, title blocks aside."""
    return " ".join(
        part.text
        for sheet in sheets
        if name in sheet.name
        for item in sheet.items
        if not item.ident.startswith(("title-block", "frame"))
        for part in item.parts
        if isinstance(part, Text)
    )


@pytest.mark.parametrize("job", JOBS)
def test_the_parts_of_the_set_follow_one_another(demo_sheets: Sheets, job: str) -> None:
    sections = list(dict.fromkeys(sheet.section for sheet in demo_sheets[job]))
    order = ["Front", "Drawings", "Schedules", "Calculations", "Tests", "Handover", "Route brief"]
    assert sections == [name for name in order if name in sections]
    changes = sum(
        a.section != b.section for a, b in zip(demo_sheets[job], demo_sheets[job][1:], strict=False)
    )
    assert changes == len(sections) - 1, "a part is not in one piece"


@pytest.mark.parametrize("job", JOBS)
def test_the_client_has_one_page_in_plain_words(demo_sheets: Sheets, job: str) -> None:
    assert sum("client-summary" in sheet.name for sheet in demo_sheets[job]) == 1
    said = words(demo_sheets[job], "client-summary")
    for word in JARGON:
        assert not re.search(rf"\b{re.escape(word)}\b", said), word
    for wanted in ("switch everything off", "Who to call", "What is not included", "trips"):
        assert wanted in said


def test_the_client_reads_where_the_main_switch_is_and_whom_to_call(demo_sheets: Sheets) -> None:
    said = words(demo_sheets["pottery-studio"], "client-summary")
    assert "What is to be fitted" in said, "the status is For construction"
    assert "13 new circuits" in said, "as many as the description says"
    assert re.search(r"chart of each board on sheets \d{2,3}, \d{2,3}\.", said)
    # specs/pottery-studio.yaml: DB1 at wall D, 5.4 m along, 1.6 m up; phone 01632 960 114
    wall = "DB1: wall D of the making floor (on your right as you stand inside and face the roller"
    assert f"{wall} door), 5.4 m from its left end, 1.6 m above" in said
    assert "01632 960 114" in said


@pytest.mark.parametrize("job", WITH_BOARDS)
def test_no_measured_cell_is_ever_filled_in(demo_models: Models, job: str) -> None:
    model = demo_models[job]
    assert model.installation.readings is None
    cells = 0
    for board in model.installation.boards.values():
        table = circuit_readings(board, model)
        heads = [column.header for column in table.columns]
        for row in table.rows:
            for head, cell in zip(heads, row, strict=True):
                if head in MEASURED:
                    cells += 1
                    # "–" stands where the circuit has no such thing: no RCD, no ring
                    assert cell in {"", "–"}, (row[0], head, cell)
        assert {row[-1] for row in board_readings(board, model).rows} == {""}
    assert cells


@pytest.mark.parametrize("job", WITH_BOARDS)
def test_what_needs_an_rcd_reading_has_a_box_for_it(demo_models: Models, job: str) -> None:
    model = demo_models[job]
    for board in model.installation.boards.values():
        table = circuit_readings(board, model)
        place = [column.header for column in table.columns].index("RCD read ms")
        for tag, row in zip(table.row_idents, table.rows, strict=True):
            circuit = model.installation.circuits[tag]
            rcd = circuit.device.rcd or any(
                model.installation.points[p].rcd for p in circuit.points
            )
            # of an older circuit an RCD that nobody recorded is unknown, not absent
            assert (row[place] == "") == (bool(rcd) or circuit.state == "existing")


def test_an_rcd_that_is_not_recorded_reads_unknown_on_both_tables(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    board = model.installation.boards["DB1"]
    told = {
        row[0]: dict(zip((c.header for c in table.columns), row, strict=True))
        for table in (circuit_details(board, model), circuit_readings(board, model))
        for row in table.rows
    }
    details = circuit_details(board, model)
    named = {row[0]: row[[c.header for c in details.columns].index("RCD")] for row in details.rows}
    for way in ("1L1", "1L3", "2TP"):  # specs/pottery-studio.yaml: existing, no RCD named
        assert named[way] == "n/r"
        assert (told[way]["RCD most ms"], told[way]["RCD read ms"]) == ("n/k", "")
    assert named["6TP"] == "none"
    assert (told["6TP"]["RCD most ms"], told["6TP"]["RCD read ms"]) == ("–", "–")


def test_readings_stand_beside_limit_and_calculation(demo_models: Models) -> None:
    model = demo_models["community-shed"]
    taken = r.Taken("A. Tester", "2026-11-21", "A", "cold day")
    reading = r.CircuitReading(
        taken,
        zs_ohm=r.Reading(0.5, "0.50"),
        rcd_ms=r.Reading(None, "not tested", not_tested="in use"),
    )
    given = r.Readings(circuits=MappingProxyType({"CU1/1": reading}))
    told = replace(model, installation=replace(model.installation, readings=given))
    table = circuit_readings(model.installation.boards["CU1"], told)
    row = dict(zip([c.header for c in table.columns], table.rows[0], strict=True))
    expected = model.results.expected["CU1/1"].zs_ohm
    assert expected is not None
    assert row["Zs read Ω"] == "0.50"
    assert row["Zs calculated Ω"] == f"{expected:.2f}"
    assert row["RCD read ms"] == "n/t"
    assert row["Remarks"] == "not tested: in use; cold day"
    assert row["R1+R2 read Ω"] == ""


@pytest.mark.parametrize("job", JOBS)
def test_all_that_was_not_checked_is_listed(
    demo_models: Models, demo_sheets: Sheets, job: str
) -> None:
    said = words(demo_sheets[job], "outstanding")
    for finding in demo_models[job].report.findings:
        if finding.word in {"error", "warning", "not checked", "waived"}:
            assert f"({finding.rule})" in said
            assert finding.subject in said
    model = demo_models[job]
    for default in defaults_in_use(model.installation, model.results):
        assert default.subject in said


def test_every_rcd_board_owes_its_notice(demo_models: Models, demo_sheets: Sheets) -> None:
    model = demo_models["pottery-studio"]
    rows = [
        [p.text for p in item.parts if isinstance(p, Text)]
        for sheet in demo_sheets["pottery-studio"]
        if "notices" in sheet.name
        for item in sheet.items
        if item.ident.startswith("notices:")
    ]
    owed = [f.subject for f in model.report.findings if f.rule == "LB-01"]
    assert owed
    for board in owed:
        assert any("RCD test" in " ".join(row) and f"{board}:" in " ".join(row) for row in rows)


@pytest.mark.parametrize("job", JOBS)
def test_every_sheet_has_its_readers(demo_sheets: Sheets, job: str) -> None:
    by_name = {sheet.key: sheet for sheet in demo_sheets[job]}
    for sheet in demo_sheets[job]:
        assert sheet.readers
        assert set(sheet.readers) <= set(READERS)
    assert "client" in by_name["client-summary"].readers
    for name, sheet in by_name.items():
        if name.startswith(("calculation", "cable-schedule", "test-results", "cut-list")):
            assert "client" not in sheet.readers, name
        if name.startswith("cut-list"):
            assert sheet.readers == ("second-electrician",)


@pytest.mark.parametrize("job", JOBS)
def test_links_lead_to_sheets_and_items_that_exist(demo_sheets: Sheets, job: str) -> None:
    idents = {s.number: {item.ident for item in s.items} for s in demo_sheets[job]}
    count = 0
    for sheet in demo_sheets[job]:
        for item in sheet.items:
            if item.link:
                number, _, _ = item.link.partition("#")
                assert number in idents, f"{sheet.name} {item.ident}: {item.link}"
                count += 1
    assert count > len(demo_sheets[job])


def test_a_circuit_leads_to_its_chart_its_cable_and_its_working(demo_sheets: Sheets) -> None:
    links = {
        item.ident: item.link
        for sheet in demo_sheets["pottery-studio"]
        if "single-line" in sheet.name
        for item in sheet.items
    }
    assert links["DB1/3TP:name"].endswith("#door-chart/DB1:3TP")
    assert links["DB1/3TP:1:cable"].endswith("#cable-schedule:W05")
    assert links["DB1/3TP:figures"].endswith("#calculations:DB1/3TP:0")


def test_the_client_gets_the_overview_in_place_of_the_diagram(demo_sheets: Sheets) -> None:
    sheets = demo_sheets["pottery-studio"]
    of_client = {sheet.key for sheet in sheets if "client" in sheet.readers}
    assert any(key.startswith("distribution-overview") for key in of_client)
    assert not any(re.fullmatch(r"single-line-diagram/\d+", key) for key in of_client)
