"""A capacity that no table gives as the cable lies is told as not checked wherever it stands.

BS 7671 Tables 4F1A and 4F3A give flexible cable in free air only; in conduit nothing is known.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from asfitted.calculate.cable_rating import CableUse, Laid, Setting, rate
from asfitted.compare.effects import cable_figures
from asfitted.explain.circuit import explain_circuit
from asfitted.explain.sheet_rows import KEY, PROBLEM, circuit_blocks
from asfitted.layout.schedule.cable_schedule import cable_schedule
from asfitted.layout.single_line.words import figure_phrases
from asfitted.pack.schedules import csv_text

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

    Models = dict[str, Model]

# Table 4F1A, 10 mm2: 47 A; Table 4F3A, 1.5 mm2: 16 A (three loaded cores, 30 C)
TAILS = {"W08-2": ("DB1/6TP", "47"), "W09-2": ("DB1/7TP", "16")}


@pytest.mark.parametrize("tag", TAILS)
def test_the_single_line_tells_the_least_of_those_checked_and_the_other_as_not(
    demo_models: Models, tag: str
) -> None:
    model = demo_models["pottery-studio"]
    circuit, free_air = TAILS[tag]
    told = figure_phrases(model, model.installation.circuits[circuit])
    fixed = model.results.cables[tag.partition("-")[0]].capacity_a
    assert f"Iz {fixed:.1f} A" in told
    at = told.index(f"{tag} Iz not checked")
    assert told[at + 1] == f"(free air {free_air}.0 A)"


def test_a_circuit_of_one_such_cable_has_no_iz(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    circuit = replace(model.installation.circuits["DB1/7TP"], cables=("W09-2",))
    told = figure_phrases(model, circuit)
    assert [words for words in told if words.startswith("Iz")] == ["Iz not checked"]


def test_schedule_comparison_and_margins_say_so_too(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    table = cable_schedule(model)
    iz = [column.header for column in table.columns].index("Iz A")
    for tag, (circuit, free_air) in TAILS.items():
        row = next(row for row in table.rows if row[0] == tag)
        assert row[iz] == f"not checked\n(free air {free_air}.0)"
        assert f",not checked (free air {free_air}.0)," in csv_text(table)
        told = cable_figures(tag, model.results)["capacity"]
        assert told == f"not checked (free air {free_air} A)"
        explained = explain_circuit(circuit, model.installation, model.results, model.report)
        assert not any(f"of {tag}," in margin.words for margin in explained.margins)
        assert any(tag in words for words in explained.not_known)


def test_the_calculations_tell_it_by_the_sign_of_their_key(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    assert PROBLEM in [mark for mark, _, _ in KEY]
    blocks, _ = circuit_blocks(model.installation, model.results)
    values = {
        block.tag: [row for row in block.rows if row[0] == "Iz" and row[3] == PROBLEM]
        for block in blocks
    }
    for circuit, free_air in TAILS.values():
        (row,) = values[circuit]
        assert row[1] == "as laid: not checked"
        assert row[2].endswith(f"= {free_air} A in free air")
    assert sum(map(len, values.values())) == len(TAILS)


def test_no_sheet_gives_the_free_air_figure_as_an_ordinary_one(
    demo_sheets: dict[str, tuple[SheetLayout, ...]],
) -> None:
    ordinary = re.compile(r"\bIz (?:47|16)\.0 A")
    texts = [
        part.text
        for sheet in demo_sheets["pottery-studio"]
        for item in sheet.items
        for part in item.parts
        if hasattr(part, "text")
    ]
    assert texts
    assert not [text for text in texts if ordinary.search(text)]


def test_a_doubtful_leg_is_not_hidden_by_one_that_carries_less() -> None:
    setting = Setting("flex_rubber", 3, 30.0, "BS EN 60898", 10.0)
    in_conduit = Laid("conduit", "B", "bunched", 1)
    bunched_in_air = Laid("in air", "E", "bunched", 3)
    found = rate(CableUse(setting, (bunched_in_air, in_conduit)), 1.5)
    assert found.laid is bunched_in_air  # 16 A x 0.7 is the least that a table gives
    assert "method B" in found.doubt
