"""The stages in order. Each gives a frozen result; each can be dumped.

spec -> resolve -> calculate -> check -> layout -> draw -> pack
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from asfitted.calculate.calculate import calculate
from asfitted.check.run import run_checks
from asfitted.draw.symbols import catalogue
from asfitted.layout.sheet_model import Model
from asfitted.resolve.resolve_job import resolve
from asfitted.sheets import lay_out_sheets
from asfitted.spec.load_job import load_job

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from asfitted.calculate.results import CalculationResults
    from asfitted.check.run import CheckReport
    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.resolve.installation import Installation

STAGES = ("spec", "resolve", "calculate", "check", "layout", "draw", "pack")
Stage = Literal["spec", "resolve", "calculate", "check", "layout"]


@dataclass(frozen=True)
class Checked:
    """A job as far as the check stage: what a design check needs."""

    installation: Installation
    results: CalculationResults
    report: CheckReport


def check_job(path: Path, progress: Callable[[str], None] | None = None) -> Checked:
    """Read, resolve, calculate and check a job.

    Raises:
        SpecError: the spec cannot be used; holds every problem found.
    """
    say = progress or (lambda _: None)
    say("reading the spec")
    loaded = load_job(path)
    say("looking names up")
    installation = resolve(loaded)
    say("routing and calculating")
    results = calculate(installation)
    say("checking")
    return Checked(installation, results, run_checks(installation, results))


def model_of(checked: Checked) -> Model:
    """Return what sheets and schedules of a checked job are made from."""
    return Model(checked.installation, checked.results, checked.report, catalogue())


def lay_out_job(
    checked: Checked, progress: Callable[[str], None] | None = None
) -> tuple[SheetLayout, ...]:
    """Lay out every sheet of a checked job.

    Raises:
        LayoutError: something does not fit or cannot be lettered.
    """
    return lay_out_sheets(model_of(checked), progress=progress)


def dump_stage(path: Path, stage: Stage) -> object:
    """Run as far as a stage and return its frozen result, for looking at and for tests."""
    if stage == "spec":
        return load_job(path).spec
    if stage == "resolve":
        return resolve(load_job(path))
    checked = check_job(path)
    if stage == "calculate":
        return checked.results
    if stage == "check":
        return checked.report
    return lay_out_job(checked)
