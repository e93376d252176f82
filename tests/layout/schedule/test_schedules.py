"""Schedules: every way once, every cable once, nothing blank."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from asfitted.layout.schedule.cable_schedule import cable_schedule
from asfitted.layout.schedule.check_list import check_list
from asfitted.layout.schedule.containment_schedule import containment_schedule
from asfitted.layout.schedule.cut_list import cut_list
from asfitted.layout.schedule.door_chart import door_chart, header_lines
from asfitted.layout.schedule.words import device_words, figure

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

    Models = dict[str, Model]


@pytest.mark.parametrize(("job", "board"), [("pottery-studio", "DB1"), ("community-shed", "CU1")])
def test_each_way_stands_once_in_true_order(demo_models: Models, job: str, board: str) -> None:
    model = demo_models[job]
    chart = door_chart(model.installation.boards[board], model)
    named = [name.strip() for row in chart.rows for name in row[0].split(",")]
    assert named == [way.name for way in model.installation.boards[board].ways]


def test_no_cell_of_a_schedule_is_blank(demo_models: Models) -> None:
    for model in demo_models.values():
        tables = [cable_schedule(model), check_list(model), containment_schedule(model)]
        tables += [door_chart(b, model) for b in model.installation.boards.values()]
        for table in tables:
            for row in table.rows:
                assert all(cell.strip() for cell in row), row


def test_the_head_of_a_chart_says_supply_measure_and_who_to_call(demo_models: Models) -> None:
    # BS 7671 514.9.1 (ii): the protective measure; (iii): where the device is
    model = demo_models["pottery-studio"]
    head = dict(header_lines(model.installation.boards["DB2"], model))
    assert "automatic disconnection of supply" in head["Protective measure"]
    assert head["Fed from"].startswith("DB1/9TP")
    assert "01632 960 114" in head["To call"]
    assert "calculated" in head["Zs and fault current here"]


def test_every_cable_has_a_row_and_lengths_are_marked_when_measured(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    table = cable_schedule(model)
    assert table.row_idents == tuple(model.installation.cables)
    rows = dict(zip(table.row_idents, table.rows, strict=True))
    assert "19.0 m (m)" in rows["D01"]
    assert not any("(m)" in cell for cell in rows["W05"])


def test_the_terms_of_a_cut_length_are_printed_and_add_up(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    for row in cut_list(model).rows:
        terms = [float(t.split()[-1]) for t in row[4].split(" + ")]
        assert sum(terms) == pytest.approx(float(row[5].split()[0]), abs=0.03), row[0]


def test_the_design_check_names_every_finding_that_is_not_a_pass(demo_models: Models) -> None:
    for model in demo_models.values():
        table = check_list(model)
        for finding in model.report.findings:
            rows = [r for r in table.rows if r[0] == finding.word and r[1] == finding.rule]
            assert any(finding.subject in r[2] for r in rows), finding
            assert any(finding.message in r[3] for r in rows), finding


def test_a_missing_figure_says_so() -> None:
    assert figure(None, 2, "Ω") == "not checked"
    assert figure(0.4, 2, "Ω") == "0.40 Ω"


def test_a_device_is_named_without_its_residual_part(demo_models: Models) -> None:
    circuits = demo_models["pottery-studio"].installation.circuits
    assert device_words(circuits["DB1/10L1"].device) == "RCBO C10 6 kA"
    assert re.fullmatch(r"C32 TP 6 kA", device_words(circuits["DB1/3TP"].device))


def test_each_run_says_level_fill_and_distance_from_the_other_band(demo_models: Models) -> None:
    table = containment_schedule(demo_models["pottery-studio"])
    rows = {
        row[0]: dict(zip((c.header for c in table.columns), row, strict=True)) for row in table.rows
    }
    assert list(rows) == ["T1", "T4", "T5", "T2", "T3", "U1"]
    assert rows["T4"]["Level mm"] == "+1950 to +2900"
    assert rows["T1"]["Level mm"] == "T/O +2900"
    # a tray is taken to hang 25 mm below its level, T3 is 55 mm high: 2900 - 25 - 2605 = 270
    assert rows["T3"]["Clear of the other band mm"].startswith("270 from T1")
    assert rows["U1"]["Length"] == "58.0 m (m)"
    assert rows["U1"]["Level mm"] == "500 deep"
