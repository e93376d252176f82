"""IS-04: motors over 0.37 kW."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.kinds import is_motor
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="IS-04",
    title="Motors over 0.37 kW",
    clause=bs7671("552.1.2 and 445"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Motors over 0.37 kW.

    What it checks. A motor over 0.37 kW has its overload protection and restart on record.

    Why it matters on site. A stalled motor burns behind a breaker that sees nothing wrong; restart
    takes fingers.

    Bad. A 4 kW motor of which nothing is said about a starter.

    Good. A 250 W fan, below the limit.

    To put it right. Read the starter: overload setting, and that it stays off after a power cut.

    Source. BS 7671 552.1.2 (overload over 0.37 kW) and 445 (loss of voltage).
    """
    limit = site_limit("motor without overload device")
    for _, point in job.points():
        if not is_motor(point):
            continue
        if point.load_w is None or point.load_w > limit.value:
            yield job.not_checked(
                point.tag,
                "overload protection and restart of the motor are not recorded",
                to_do="Read the starter: its overload setting, and that it stays off when power "
                "comes back.",
            )
        else:
            yield job.passes(point.tag)
