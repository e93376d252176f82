"""The stages in order. Each gives a frozen result; each can be dumped.

spec -> resolve -> calculate -> check -> layout -> draw -> pack
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from asfitted.calculate.calculate import calculate
from asfitted.check.run import run_checks
from asfitted.compare.compare import Side, compare
from asfitted.compare.issue_chain import as_laid, resolve_issue
from asfitted.draw.symbols import catalogue
from asfitted.layout.revision.marks import concerned_sheets, sheet_changes, with_clouds
from asfitted.layout.sheet_model import Model
from asfitted.sheets import lay_out_sheets
from asfitted.spec.load_job import load_job

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from asfitted.calculate.results import CalculationResults
    from asfitted.check.run import CheckReport
    from asfitted.compare.changes import Changes
    from asfitted.layout.revision.marks import SheetChange
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
    issued: Checked | None = None  # the issue that it is compared with

    @property
    def changes(self) -> Changes | None:
        """What changed since the issue before; None when none was given."""
        if self.issued is None:
            return None
        before = Side(self.issued.installation, self.issued.results)
        return compare(before, Side(self.installation, self.results))


def check_job(
    path: Path,
    progress: Callable[[str], None] | None = None,
    *,
    since: Path | None = None,
    site: Path | None = None,
) -> Checked:
    """Read, resolve, calculate and check a job, and the issue before it where there is one.

    Args:
        path: the job file.
        progress: told what is being done.
        since: the job file of the issue to compare with, in place of what the job itself names.
        site: mark-ups from site to lay over the job.

    Raises:
        SpecError: a file cannot be used; holds every problem found.
    """
    say = progress or (lambda _: None)
    say("reading the spec and looking names up")
    issue = resolve_issue(path, since, site)
    say("routing and calculating")
    installation, designed = issue.installation, None
    if issue.design is not None:
        designed = _checked(issue.design)
        installation = as_laid(installation, designed.results)
    checked = _checked(installation)
    if issue.before is None:
        return checked
    say("the same for the issue before it")
    is_design = designed is not None and issue.before is issue.design
    return replace(checked, issued=designed if is_design else _checked(issue.before))


def _checked(installation: Installation) -> Checked:
    results = calculate(installation)
    return Checked(installation, results, run_checks(installation, results))


def model_of(checked: Checked) -> Model:
    """Return what sheets and schedules of a checked job are made from."""
    issued = model_of(checked.issued) if checked.issued else None
    return Model(
        checked.installation,
        checked.results,
        checked.report,
        catalogue(),
        changes=checked.changes,
        issued=issued,
    )


def lay_out_job(
    checked: Checked, progress: Callable[[str], None] | None = None
) -> tuple[SheetLayout, ...]:
    """Lay out every sheet of a checked job.

    Raises:
        LayoutError: something does not fit or cannot be lettered.
    """
    model = model_of(checked)
    if model.issued is None:
        return lay_out_sheets(model, progress=progress)
    issued = lay_out_sheets(model.issued)
    return with_clouds(_told_of_changes(model, issued, progress), issued, model)


def _told_of_changes(
    model: Model,
    issued: tuple[SheetLayout, ...],
    progress: Callable[[str], None] | None = None,
) -> tuple[SheetLayout, ...]:
    """Return the sheets laid out a second time, when it is known which of them changed.

    The record of change lists these, which may take a page more, so every number may be another;
    what a sheet says besides is the same in both rounds, since references to sheets do not count.
    """
    concerned = concerned_sheets(lay_out_sheets(model), issued, model)
    return lay_out_sheets(replace(model, concerned=concerned), progress=progress)


def changed_sheets(checked: Checked) -> tuple[SheetChange, ...]:
    """Return what changed on each sheet since the issue before; nothing when none was given."""
    model = model_of(checked)
    if model.issued is None:
        return ()
    issued = lay_out_sheets(model.issued)
    return sheet_changes(_told_of_changes(model, issued), issued, model)


def dump_stage(path: Path, stage: Stage) -> object:
    """Run as far as a stage and return its frozen result, for looking at and for tests."""
    if stage == "spec":
        return load_job(path).spec
    if stage == "resolve":
        return resolve_issue(path).installation
    checked = check_job(path)
    if stage == "calculate":
        return checked.results
    if stage == "check":
        return checked.report
    return lay_out_job(checked)
