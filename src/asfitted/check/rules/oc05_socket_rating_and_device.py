"""OC-05: industrial socket-outlet not overprotected."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.kinds import is_industrial_socket
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="OC-05",
    title="Industrial socket-outlet not overprotected",
    clause=bs7671("512.1.2 and 533.1"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Industrial socket-outlet not overprotected.

    What it checks. The device is not rated above the industrial socket-outlet that it protects.

    Why it matters on site. A 16 A pin behind a 32 A breaker may carry 32 A until it melts.

    Bad. A 16 A 5-pin socket-outlet on a C32 TP.

    Good. A 16 A 5-pin socket-outlet on a C16 TP.

    To put it right. Change the device to the rating of the outlet, or the outlet to that of the
    device.

    Source. BS 7671 512.1.2 (current); outlets to BS EN 60309. 13 A outlets have the fuse in the
    plug.
    """
    for circuit, point in job.points():
        if is_industrial_socket(point):
            yield job.at_least(
                point.tag,
                what="rating of the socket-outlet",
                found=point.rating_a,
                limit_is=f"its {circuit.device.words} at {circuit.tag}",
                limit=circuit.device.rating_a,
                unit="A",
                to_do="Match the device to the outlet, or fit a larger outlet.",
            )
