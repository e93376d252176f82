"""Flexible cable in conduit: its table is for free air, so the capacity is never passed on it."""

from __future__ import annotations

from pathlib import Path

import pytest
from rule_cases import Case, findings_of

from asfitted.check.finding import Status
from asfitted.pipeline import check_job

SPECS = Path(__file__).parents[2] / "specs"
# BS 7671 Tables 4F1A and 4F3A have one column, for cable in free air
TAILS = {"pottery-studio": ("W08-2", "W09-2"), "community-hall": ("W03-2",)}


@pytest.mark.parametrize("name", TAILS)
def test_tails_in_flexible_conduit_are_told_as_not_checked(name: str) -> None:
    checked = check_job(SPECS / f"{name}.yaml")
    told = {f.subject: f for f in checked.report.findings if f.rule == "OC-02"}
    for tag in TAILS[name]:
        assert told[tag].status is Status.NOT_CHECKED
        assert "table for free air" in told[tag].message
        cable = checked.results.cables[tag]
        assert cable.method == "free air"
        assert "table for free air" in cable.steps[0].words
        assert "no table for flexible cable laid by method B" in cable.steps[0].source


def test_a_device_too_large_even_in_free_air_fails_all_the_same() -> None:
    figures = {"cables.W02.capacity_a": 15.9, "cables.W02.capacity_doubt": "for free air"}
    (finding,) = findings_of(Case("OC-02", "bad", {}, figures, ()))
    assert (finding.subject, finding.status) == ("W02", Status.FAILS)
