"""AF-03: rating plates are read."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.as_fitted import is_as_fitted
from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.plates import plates_of
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="AF-03",
    title="Rating plates are read",
    clause=practice("Records of as-fitted drawings"),
    severity=Severity.NOTE,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Rating plates are read.

    What it checks. On an issue with the status "As fitted" each board, machine, starter and data
    device has its make, model and serial number.

    Why it matters on site. A spare is ordered by the plate; who has no plate on file opens the
    board to read it.

    Bad. An as-fitted issue whose recorder has no serial number.

    Good. The same with all three, read off the plate.

    To put it right. Read the plate on site and write make, model and serial number at the thing;
    what cannot be read is listed as not seen.

    Source. Drawing practice.
    """
    if not is_as_fitted(job.installation.job):
        return
    for tag, plate in plates_of(job.installation).items():
        missing = ", ".join(plate.missing)
        yield job.holds(
            tag,
            not plate.missing,
            f"The issue is as fitted, and {missing} of its rating plate "
            f"{'are' if plate.missing[1:] else 'is'} not recorded: told as not seen.",
            to_do="Read the plate on site and write make, model and serial number.",
            found="not recorded",
        )
