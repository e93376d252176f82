"""Supports: what elevations, strips, containment and fixings lists tell is one figure."""

from __future__ import annotations

import re
from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING

import pytest
from sheet_words import words_by_ident

from asfitted.calculate.materials.take_off import take_off
from asfitted.layout.containment.developed_run import developed_runs
from asfitted.layout.containment.strip_heading import facts_of
from asfitted.layout.elevation.notes import general_notes
from asfitted.layout.elevation.wall_content import walls_with_content

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

HEAVY_KG_M = 40.0  # × 1.25 reserve = 50 kg/m, twice the 25 of the working method: 1500 / √2


def counted(model: Model) -> dict[str, set[int]]:
    """Return at what centres the fixings list counts the supports of each run, mm."""
    take = take_off(model.installation, model.results)
    found: dict[str, set[int]] = {}
    for fixing in take.fixings:
        if fixing.subject in model.installation.containment and "tie" not in fixing.what:
            found.setdefault(fixing.subject, set()).add(fixing.spacing_mm)
    return found


def on_strips(model: Model) -> dict[str, str]:
    runs = developed_runs(model.installation, model.results)
    return {run.run.tag: facts_of(run)[1] for run in runs}


def on_elevations(model: Model) -> str:
    contents = walls_with_content(model.installation, model.results)
    notes = general_notes(contents, model.results, widened=False)
    return next(note for note in notes if note.startswith("Supports"))


def figures(words: str) -> set[int]:
    """Return the spacings in some words, what they are closer than and the load left out."""
    told = re.sub(r",? ?:? ?closer than.*?kg/m", "", words)
    return {int(f) for f in re.findall(r"\b\d{3,4}\b", told)}


@pytest.fixture(name="heavy")
def heavy_model(demo_models: dict[str, Model]) -> Model:
    """Return the pottery with one tray so heavy that its supports stand closer."""
    model = demo_models["pottery-studio"]
    loads = dict(model.results.containment)
    loads["T1"] = replace(loads["T1"], mass_kg_m=HEAVY_KG_M)
    results = replace(model.results, containment=MappingProxyType(loads))
    return replace(model, results=results)


def test_a_heavy_tray_is_told_closer_wherever_it_is_told(heavy: Model) -> None:
    assert counted(heavy)["T1"] == {1050}  # 1500 × √(25 / 50) = 1061, down to the next 50
    assert counted(heavy)["T4"] == {1500}
    told = "1050 mm apart: closer than 1500 mm for its load of 50.0 kg/m"
    assert told in on_strips(heavy)["T1"]
    note = on_elevations(heavy)
    assert "perforated tray T1 1050, closer than 1500 for the load of 50.0 kg/m" in note
    assert "perforated tray T2 T4 T5 1500" in note


@pytest.mark.parametrize("job", ["pottery-studio", "community-shed", "shop-cctv"])
def test_drawings_tell_what_the_fixings_list_counts(
    demo_models: dict[str, Model], demo_sheets: dict[str, tuple[SheetLayout, ...]], job: str
) -> None:
    model, sheets = demo_models[job], demo_sheets[job]
    spacings = counted(model)
    assert spacings
    drawn = " ".join(words_by_ident(sheets, "containment-strips").values())
    elevations = " ".join(words_by_ident(sheets, "elevation").values())
    for tag, wanted in spacings.items():
        strip = on_strips(model)[tag]
        assert wanted <= figures(strip), tag
        assert strip in drawn, tag
        assert wanted <= figures(on_elevations(model)), tag
    assert on_elevations(model).split(". ")[0] in elevations
