"""OC-06: isolator guarded by its device."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.kinds import is_isolator
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="OC-06",
    title="Isolator guarded by its device",
    clause=bs7671("536.4.202 and 537.2"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Isolator guarded by its device.

    What it checks. An isolator is rated for at least the device of its circuit.

    Why it matters on site. A switch has no overload release of its own: only the device before it
    keeps it cool.

    Bad. A 20 A isolator on a C40 TP.

    Good. A 63 A isolator on a C40 TP.

    To put it right. Fit an isolator of the next rating up.

    Source. BS 7671 536.4.202, overload protection of switches without their own.
    """
    for circuit, point in job.points():
        if is_isolator(point):
            yield job.at_least(
                point.tag,
                what="rating of the isolator",
                found=point.rating_a,
                limit_is=f"its {circuit.device.words} at {circuit.tag}",
                limit=circuit.device.rating_a,
                unit="A",
                to_do="Fit an isolator of a higher rating.",
            )
