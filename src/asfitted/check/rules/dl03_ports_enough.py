"""DL-03: switch has enough ports."""

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
    id="DL-03",
    title="Switch has enough ports",
    clause=practice("BS EN 50174-1"),
    severity=Severity.ERROR,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Switch has enough ports.

    What it checks. A switch has a port for every device on it.

    Why it matters on site. Otherwise a second small switch appears, unpowered by the back-up,
    behind the cabinet.

    Bad. Ten devices on an 8-port switch.

    Good. Eight or fewer.

    To put it right. Fit a larger switch or a second one.

    Source. Plain count of what the spec gives.
    """
    for total in job.results.equipment:
        if total.what == "ports":
            yield job.at_most(
                total.tag,
                what="devices on its ports",
                found=total.used,
                limit_is="its ports",
                limit=total.available,
                unit="",
                to_do="Fit a larger switch or a second one.",
            )
