"""Each smaller size of a cable is refused with a reason and its figure."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.results import SizeTried
from asfitted.explain.refused_sizes import refused_words
from asfitted.explain.sheet_rows import circuit_blocks

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model


def test_sizes_that_fail_alike_are_told_together() -> None:
    tried = (
        SizeTried(
            1.5, "protective conductor needs 1.17 mm² under fault, has 1 mm²; Zs 2 Ω is over 1"
        ),
        SizeTried(2.5, "Iz 19.0 A is under In 32 A"),
        SizeTried(4.0, "Iz 25.6 A is under In 32 A"),
        SizeTried(6.0, ""),
    )
    assert refused_words(tried) == (
        "1.5 mm² fails: protective conductor needs 1.17 mm² under fault, has 1 mm²; "
        "2.5, 4 mm² fail: Iz 19.0, 25.6 A is under In 32 A"
    )
    assert refused_words(tried[3:]) == ""


def test_every_size_that_was_refused_stands_on_the_calculations(
    demo_models: dict[str, Model],
) -> None:
    for model in demo_models.values():
        blocks, _ = circuit_blocks(model.installation, model.results)
        told = {row[0]: row[2] for block in blocks for row in block.rows}
        for tag, cable in model.results.cables.items():
            if not cable.size_chosen or tag not in told:
                continue
            words = told[tag]
            if words.startswith("chosen with "):
                words = told[words.removeprefix("chosen with ")]
            for one in cable.tried:
                if one.reason:
                    assert f"{one.csa_mm2:g}" in words, (tag, words)
                    assert one.reason.split()[1] in words or one.reason.split()[3] in words


def test_the_lighting_circuit_says_what_fails(demo_models: dict[str, Model]) -> None:
    # energy 18 000 A2s, k 115: sqrt(18000) / 115 = 1.17 mm2; 1.5 mm2 flat cable has 1 mm2
    model = demo_models["pottery-studio"]
    blocks, _ = circuit_blocks(model.installation, model.results)
    rows = {row[0]: row[2] for block in blocks for row in block.rows}
    assert rows["W16"] == (
        "chosen; 1.5 mm² fails: protective conductor needs 1.17 mm² under fault, has 1 mm²"
    )
    assert rows["W16-2"] == "chosen with W16"


def test_the_line_under_fault_is_told_with_the_cable_whose_k_it_has(
    demo_models: dict[str, Model],
) -> None:
    # BS 7671 Table 43.1: k 143 for 90 C thermosetting (W08), 141 for 60 C rubber (W08-2)
    model = demo_models["pottery-studio"]
    blocks, _ = circuit_blocks(model.installation, model.results)
    kiln = next(block for block in blocks if block.tag == "DB1/6TP")
    rows = {row[0]: row for row in kiln.rows}
    assert rows["S line"][1:3] == ("line: has 10 mm² in W08", "√(46800 A²s) / 143")
    assert rows["S cpc"][1] == "cpc: has 10 mm² in W08-2"
    assert rows["S cpc"][2].endswith("/ 141")
