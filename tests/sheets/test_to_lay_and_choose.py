"""What is to be laid or chosen on site is told the same on every sheet (common practice)."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from sheet_words import said

from asfitted.layout.brief.work_order import order_of_work
from asfitted.layout.containment.supports import support_words
from asfitted.layout.declared_runs import rise_words, way_words
from asfitted.layout.document.to_choose import tail_words, to_choose
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

#: What holds a cable or conduit, or a run, in the words of the fixings list.
METAL = ("metal cleat", "metal clip", "metal saddle", "metal tie")
OF_RUNS = ("wall bracket", "stand-off bracket", "trapeze hanger", "screw fixing")


@pytest.fixture
def pottery(demo_models: dict[str, Model]) -> Model:
    return demo_models["pottery-studio"]


def test_every_holder_of_a_cable_or_conduit_says_that_it_is_metal(
    demo_models: dict[str, Model],
) -> None:
    """BS 7671 521.10.202: no cable may fall early in a fire; cleats of plastic let go."""
    for model in demo_models.values():
        off = model.results.take_off
        assert off is not None
        for fixing in off.fixings:
            assert fixing.what.startswith((*METAL, *OF_RUNS)), fixing
        listed = [line.item for line in off.lines]
        assert not [item for item in listed if item.startswith(("saddle", "cleat", "clip"))]


def test_a_new_duct_is_to_be_laid_on_every_sheet(
    pottery: Model, demo_sheets: dict[str, tuple[SheetLayout, ...]]
) -> None:
    steps = [row[1] for row in order_of_work(pottery, ()).rows]
    (trench,) = [words for words in steps if words.startswith("Lay U1")]
    for told in ("0.5 m deep", "scan", "trench", "warning tape", "common practice"):
        assert told in trench
    assert not [words for words in steps if "containment" in words and "U1" in words]
    whole: dict[str, str] = {}
    for sheet in demo_sheets["pottery-studio"]:
        words = " ".join(said(item) for item in sheet.items)
        whole[sheet.key.partition("-")[0]] = whole.get(sheet.key.partition("-")[0], "") + words
    assert "new, way not drawn" in whole["containment"]
    assert "New runs whose way is not drawn, nor their rise up a wall: U1" in whole["outstanding"]
    assert "out of sight: U1" not in whole["outstanding"]


def test_an_existing_duct_is_out_of_sight_and_nothing_is_laid(pottery: Model) -> None:
    new = pottery.installation.containment["U1"]
    old = replace(new, state=State.EXISTING)
    assert (way_words(new), way_words(old)) == ("new, way not drawn", "way not surveyed")
    assert support_words(new, None, None) == "set out on site; laid 0.5 m deep"
    assert support_words(old, None, None) == "its way and depth were not surveyed"
    assert "seal its mouth" in rise_words(new)
    assert rise_words(old) == ""


def test_tails_beyond_fused_connection_units_are_told_once_each(pottery: Model) -> None:
    # F2 feeds J1 and FL1 by cables of the job: it has no tail
    words = tail_words(pottery.installation)
    assert words == (
        "tail to the appliance: by its maker, not included: F1 to CAB1, F3 to sink water heater"
    )
    assert sum(words[1:] in entry for entry in to_choose(pottery)) == 1


def test_top_fixings_are_open_and_counted(pottery: Model) -> None:
    # T2 10, luminaires and AP1 9, saddles off the walls 13
    (entry,) = [one for one in to_choose(pottery) if one.startswith("Top fixings")]
    assert entry.startswith("Top fixings, 32: not recorded, choose for the structure")
    assert "T2, L1, L2, L3, L4, AP1" in entry
