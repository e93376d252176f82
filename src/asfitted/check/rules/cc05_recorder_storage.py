"""CC-05: recorder keeps pictures long enough."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CC-05",
    title="Recorder keeps pictures long enough",
    clause=practice("the operator's keeping time"),
    severity=Severity.WARNING,
    provenance="derived",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Recorder keeps pictures long enough.

    What it checks. The disk holds the pictures for as many days as the client asks.

    Why it matters on site. The theft of three weeks ago is already written over.

    Bad. 5.8 TB wanted on a 4 TB disk.

    Good. 2.6 TB wanted on it.

    To put it right. Fit a larger disk, a lower bit rate, or agree fewer days in writing.

    Source. Bit rate × time, with the formatted capacity of the disk.
    """
    for total in job.results.equipment:
        if total.what == "storage":
            yield job.at_most(
                total.tag,
                what="disk wanted for the days asked",
                found=total.used,
                limit_is="its disk",
                limit=total.available,
                unit=total.unit,
                to_do="Fit a larger disk, a lower bit rate, or agree fewer days in writing.",
            )
