"""CC-04: recorder has enough channels."""

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
    id="CC-04",
    title="Recorder has enough channels",
    clause=practice("BS EN 62676-4"),
    severity=Severity.ERROR,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Recorder has enough channels.

    What it checks. The recorder has a channel for every camera.

    Why it matters on site. The last camera shows live and is never recorded.

    Bad. Nine cameras on 8 channels.

    Good. Four cameras on 8 channels.

    To put it right. Fit a larger recorder.

    Source. Plain count of what the spec gives.
    """
    for total in job.results.equipment:
        if total.what == "channels":
            yield job.at_most(
                total.tag,
                what="cameras to be recorded",
                found=total.used,
                limit_is="its channels",
                limit=total.available,
                unit="",
                to_do="Fit a larger recorder.",
            )
