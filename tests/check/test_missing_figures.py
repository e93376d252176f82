"""No missing figure stops a rule or passes in silence."""

from __future__ import annotations

from dataclasses import fields
from typing import TYPE_CHECKING, Any

import pytest
from edit_frozen import edited
from hand_built_job import installation, results

from asfitted.check.finding import Finding
from asfitted.check.run import CheckReport, run_checks
from asfitted.resolve.installation import Installation

if TYPE_CHECKING:
    from collections.abc import Iterator

RESULT_GROUPS = ("circuits", "cables", "boards", "data", "containment")
JOB_GROUPS = ("boards", "points", "cables", "data_devices", "containment")


def may_be_none(thing: Any) -> list[str]:
    return [f.name for f in fields(thing) if str(f.type).endswith("None")]


def paths(thing: Any, groups: tuple[str, ...]) -> Iterator[str]:
    for group in groups:
        for tag, each in getattr(thing, group).items():
            for name in may_be_none(each):
                if getattr(each, name) is not None:
                    yield f"{group}.{tag}.{name}"


JOB_PATHS = [
    *paths(installation(), JOB_GROUPS),
    *(f"supply.{name}" for name in may_be_none(installation().supply)),
    "supply",
]
RESULT_PATHS = [*paths(results(), RESULT_GROUPS), "max_demand_a"]
BASE = run_checks(installation(), results())


def words(report: CheckReport) -> list[str]:
    return [f.message for f in report.findings if isinstance(f, Finding)]


@pytest.mark.parametrize("path", JOB_PATHS)
def test_a_fact_left_out_of_the_spec_stops_no_rule(path: str) -> None:
    report = run_checks(edited(installation(), path, None), results())
    assert not [w for w in words(report) if "None" in w]


@pytest.mark.parametrize("path", RESULT_PATHS)
def test_a_figure_that_could_not_be_worked_out_is_never_a_new_pass(path: str) -> None:
    report = run_checks(installation(), edited(results(), path, None))
    assert not [w for w in words(report) if "None" in w]
    assert all(report.checked[rule] <= BASE.checked[rule] for rule in BASE.checked)


# The figures that a rule holds against a limit: without them the reader must be told.
JUDGED = (
    *(f"circuits.DB1/1L1.{f}" for f in ("design_current_a", "drop_pct", "zs_ohm", "fault_max_ka")),
    *(f"circuits.DB1/1L1.{f}" for f in ("cpc_needed_mm2", "cpc_has_mm2", "line_energy_a2s")),
    *(f"circuits.DB1/1L1.{f}" for f in ("drop_limit_pct", "zs_limit_ohm", "line_withstand_a2s")),
    *(f"data.CAM1.{f}" for f in ("length_m", "at_device_v", "supply_v", "window_v")),
    *(f"data.CAM2.{f}" for f in ("load_w", "poe_class_w", "current_a", "length_m")),
    "max_demand_a",
    "containment.T2.separation_mm",
)


@pytest.mark.parametrize("path", JUDGED)
def test_a_judged_figure_that_is_missing_is_said_aloud(path: str) -> None:
    report = run_checks(installation(), edited(results(), path, None))
    assert report.not_checked > BASE.not_checked


@pytest.mark.parametrize(
    "group", ["circuits", "cables", "boards", "routes", "sections", "data", "containment"]
)
def test_rules_live_with_results_that_are_not_there(group: str) -> None:
    empty = edited(results(), group, type(results().cables)({}))
    assert isinstance(run_checks(installation(), empty), CheckReport)


def test_an_empty_job_gives_no_error() -> None:
    bare = Installation(job=installation().job, supply=None)
    empty = type(results())()
    report = run_checks(bare, empty)
    assert report.errors == ()
