"""How a figure is known, and which fault a current is of, told alike on every sheet."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from sheet_words import words_by_ident

from asfitted.calculate.network import fault_of_ipf, line_to_neutral_ka
from asfitted.layout.given_words import how_given, known_fault
from asfitted.layout.schedule.board_readings import board_readings
from asfitted.layout.schedule.door_chart import header_lines
from asfitted.layout.single_line.words import board_figures
from asfitted.layout.title_block import supply_words
from asfitted.resolve.installation import Basis, Known

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

    Sheets = dict[str, tuple[SheetLayout, ...]]
    Models = dict[str, Model]

FAULT = {"pottery-studio": "three-phase", "community-shed": "line to neutral"}


def test_half_of_a_three_phase_current_is_that_to_neutral() -> None:
    # Guidance Note 3: the three-phase current is about twice that to neutral (common practice)
    assert line_to_neutral_ka(3.6, 3) == pytest.approx(1.8)
    assert line_to_neutral_ka(0.9, 1) == pytest.approx(0.9)


@pytest.mark.parametrize(("job", "fault"), FAULT.items())
def test_every_fault_current_says_which_fault(
    demo_models: Models, demo_sheets: Sheets, job: str, fault: str
) -> None:
    model = demo_models[job]
    supply = model.installation.supply
    assert supply is not None
    assert supply.ipf_ka is not None
    told = f"{supply.ipf_ka.value:g} kA (m) {fault}"
    assert f"Ipf {told}" in supply_words(supply)
    board = next(b for b in model.installation.boards.values() if b.fed_by == "supply")
    assert any(f"{fault}, calculated" in phrase for phrase in board_figures(model, board))
    head = dict(header_lines(board, model))
    assert f"{fault}, calculated" in head["Zs and fault current here"]
    faults = [r[0] for r in board_readings(board, model).rows if r[0].startswith("Fault current")]
    assert faults == [f"Fault current at the {at}, {fault}" for at in ("origin", "board")]
    overview = " ".join(words_by_ident(demo_sheets[job], "distribution", "single-line").values())
    assert f"Ipf {told}" in overview
    described = " ".join(words_by_ident(demo_sheets[job], "description").values())
    assert f"Prospective fault current, {fault}" in described


def test_the_calculations_tell_three_phase_and_single_phase_circuits_apart(
    demo_models: Models,
) -> None:
    model = demo_models["pottery-studio"]
    for circuit in model.installation.circuits.values():
        result = model.results.circuits.get(circuit.tag)
        step = {s.symbol: s for s in result.steps}.get("Ik max") if result else None
        if step is not None:
            wanted = fault_of_ipf(3 if circuit.phase == "TP" else 1)
            assert step.words.endswith(wanted), circuit.tag


def test_a_current_that_was_not_given_has_no_kind() -> None:
    assert known_fault(None, 3) == "not recorded"
    assert known_fault(Known(2.0, "kA", Basis.DECLARED), 1) == "2 kA (d) line to neutral"


def test_a_frequency_that_nobody_gave_is_assumed_wherever_it_stands(
    demo_models: Models, demo_sheets: Sheets
) -> None:
    installation = demo_models["pottery-studio"].installation
    assert how_given(installation, "supply", "frequency") == "assumed"
    assert how_given(installation, "supply", "voltage") == "as given"
    written = replace(installation, defaults=())
    assert how_given(written, "supply", "frequency") == "as given"
    sheets = demo_sheets["pottery-studio"]
    described = " ".join(words_by_ident(sheets, "description").values())
    assert "50 Hz as given; frequency assumed" in described
    assert "50 Hz (a)" in " ".join(words_by_ident(sheets, "distribution").values())


def test_no_sheet_denies_the_measured_figures_that_were_given(demo_sheets: Sheets) -> None:
    told = " ".join(words_by_ident(demo_sheets["pottery-studio"], "outstanding").values())
    assert "figures marked (m) are as given, nothing else was measured" in told
    assert "nothing here was measured" not in told
