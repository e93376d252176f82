"""The route brief of a print from site: what was found, where it is drawn, what is in place."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from asfitted.layout.schedule.cut_list import cut_list
from asfitted.layout.sheet_layout import Text
from asfitted.layout.sheet_model import Numbers
from asfitted.pipeline import check_job, model_of
from asfitted.sheets import elevations, lay_out_sheets, route_brief

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model, SheetPlan

SPECS = Path(__file__).parents[2] / "specs"
SITE = SPECS / "shared" / "pottery-studio-site.yaml"
CABINET_MM = (7000.0, 7600.0)  # CAB1, 600 wide at 7.3 m of wall C


@pytest.fixture(scope="module")
def model() -> Model:
    found = model_of(check_job(SPECS / "pottery-studio.yaml", site=SITE))
    return replace(found, planned=tuple(elevations.plan(found)))


@pytest.fixture(scope="module")
def numbers(model: Model) -> Numbers:
    plans: list[SheetPlan] = [*model.planned, *route_brief.plan(model)]
    keys = ((key, i) for i, p in enumerate(plans, 1) for key in (p.key, *p.also))
    return Numbers({key: f"{i:03d}" for key, i in keys})


@pytest.fixture(scope="module")
def told(model: Model, numbers: Numbers) -> dict[str, str]:
    pages = [route_brief.build(plan, model, numbers) for plan in route_brief.plan(model)]
    return {
        item.ident: " ".join(part.text for part in item.parts if isinstance(part, Text))
        for page in pages
        for item in page.items
    }


def test_a_change_names_the_sheets_that_draw_it(told: dict[str, str], numbers: Numbers) -> None:
    x1 = told["brief:change:point/X1"]
    assert x1.endswith(f" {numbers.of('elevation/B')}")
    cable = told["brief:change:cable/W12"]
    for key in ("elevation/C", "elevation/D", "brief-card/W12"):
        assert numbers.of(key) in cable, key
    assert "¤" not in " ".join(told.values())


def test_a_clipped_way_is_told_once(told: dict[str, str]) -> None:
    words = told["brief:change:cable/W12"]
    assert "way now clipped direct at +3100" in words
    assert "clipped, clipped" not in words
    assert "was clipped direct at +1350" in words


def test_it_is_said_which_print_holds(told: dict[str, str]) -> None:
    words = told["brief:changes:since"]
    assert "found otherwise on site holds as it stands on this print" in words
    assert "all else holds as issued in P01" in words


def test_notes_from_site_are_told_even_where_nothing_changed(told: dict[str, str]) -> None:
    assert "goes round the new duct" in told["brief:change:cable/W06"]
    assert "passes over the shelf" in told["brief:change:cable/W12"]
    assert "glass cracked" in told["brief:change:site/CAM1"]


def test_what_was_found_in_place_is_neither_fixed_nor_cut(
    model: Model, told: dict[str, str]
) -> None:
    steps = [words for ident, words in told.items() if ":step " in ident]
    fixed = next(words for words in steps if "then containment" in words)
    laid = next(words for words in steps if "lay armoured cables" in words)
    assert "T3" not in fixed
    assert "W12" not in laid
    assert any("Found fitted on site: W12, T3" in words for words in steps)
    walls = [words for ident, words in told.items() if ":work:" in ident]
    assert not any(words.startswith("T3 fix") for words in walls)
    assert any(words.startswith("T3 100 × 55 wire basket: found fitted") for words in walls)
    assert told["card:W12:head"].endswith("found fitted")
    assert "look it over, nothing to cut" in told["card:W12:words"]
    assert "☐ pulled" not in told["card:W12:ticks"]
    assert "☐ tested" in told["card:W12:ticks"], "a test is never ticked before it is made"
    rows = {row[0]: row for row in cut_list(model).rows}
    assert rows["W12"][6:] == ("found fitted", "–")
    assert rows["W05"][7] == ""


def test_a_measured_length_is_no_sum_of_the_drawn_legs(told: dict[str, str]) -> None:
    """12.4 m as the mark-up says; legs T4 0.95, T1 7.70, drop 1.60 add up to 10.25."""
    words = told["card:W07:words"]
    assert "measured 12.40 m from end to end, tails in it; way not surveyed" in words
    assert "10.25 m without tails, and do not add up to it" in words
    assert "Cut measured on site 12.40 + waste 1.60 = 14.00 m" in words
    assert "way 14.00" not in words


def test_a_clipped_cable_passes_beside_the_cabinet(model: Model) -> None:
    """W12 comes down from +3100 to F1 under CAB1: beside it, 50 mm clear (common practice)."""
    route = model.results.routes["W12"]
    wall = next(w for w in model.installation.walls.values() if w.name == "C")
    uprights = [leg for leg in route.legs if leg.wall == "C" and leg.start.z != leg.end.z]
    assert len(uprights) == 1
    at = uprights[0].start
    along = (at.x - wall.start.x) * wall.direction.x + (at.y - wall.start.y) * wall.direction.y
    assert along == pytest.approx(CABINET_MM[1] + 50.0)
    assert sum(leg.length_mm for leg in route.legs) == pytest.approx(1150 + 5400 + 350 + 1750 + 350)


def test_the_wall_is_drawn_at_the_larger_scale_where_no_page_is_lost(told: dict[str, str]) -> None:
    assert "1:50 @ A4" in told["brief:wall:C:beside"]


def test_in_the_whole_set_a_change_names_the_elevations_too(model: Model) -> None:
    sheets = lay_out_sheets(replace(model, planned=()))
    by_key = {sheet.key: sheet.number for sheet in sheets}
    (cable,) = [
        " ".join(part.text for part in item.parts if isinstance(part, Text))
        for sheet in sheets
        for item in sheet.items
        if item.ident == "brief:change:cable/W12"
    ]
    assert by_key["elevation/C"] in cable
    assert by_key["elevation/D"] in cable
