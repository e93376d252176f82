"""Which cables may be left out of a group: BS 7671 Appendix 4, note to Table 4C1 (memory)."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from asfitted.calculate.calculate import calculate
from asfitted.calculate.containment.leg_groups import companions
from asfitted.calculate.light_cables import lightly_loaded
from asfitted.calculate.routes.cable_routes import find_paths
from asfitted.resolve import resolve
from asfitted.spec.load_job import load_job

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Installation

SPECS = Path(__file__).parents[2] / "specs"


@pytest.fixture(scope="module")
def studio() -> tuple[Installation, CalculationResults, frozenset[str]]:
    installation = resolve(load_job(SPECS / "pottery-studio.yaml"))
    results = calculate(installation)
    groups = companions(installation, find_paths(installation))
    return installation, results, lightly_loaded(installation, results, groups)


def test_a_fixed_load_under_30_per_cent_is_left_out(
    studio: tuple[Installation, CalculationResults, frozenset[str]],
) -> None:
    # extract fan: 3.5 A on W10, rated 13.9 A in its group: 25 %
    assert "W10" in studio[2]


def test_a_socket_outlet_or_a_board_is_never_known_to_stay_light(
    studio: tuple[Installation, CalculationResults, frozenset[str]],
) -> None:
    # wheel bench socket-outlet: 5.1 A meant, of 19.0 A: 27 %, but anything may be plugged in
    _, results, light = studio
    assert results.cables["W07"].design_current_a < 0.3 * results.cables["W07"].capacity_a
    assert "W07" not in light
    assert "W11" not in light


def test_leaving_out_never_lowers_a_capacity(
    studio: tuple[Installation, CalculationResults, frozenset[str]],
) -> None:
    _, results, light = studio
    for tag in light:
        assert results.cables[tag].design_current_a <= 0.3 * results.cables[tag].capacity_a
