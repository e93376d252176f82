"""SG-01: cables only in runs that permit them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="SG-01",
    title="Cables only in runs that permit them",
    clause=bs7671("528.1"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Cables only in runs that permit them.

    What it checks. No cable lies in a run that is not meant for its band.

    Why it matters on site. A data cable beside mains can become live along its whole length from
    one bad joint.

    Bad. A Cat6 cable taken by way of the power tray.

    Good. The same cable in the data basket.

    To put it right. Take the cable out of that run, or fit a partition and name the run for both.

    Source. BS 7671 528.1: bands I and II apart, unless insulated for the highest voltage.
    """
    for route in job.results.routes.values():
        band = job.installation.cables[route.cable].band
        runs = ", ".join(route.forbidden)
        yield job.holds(
            route.cable,
            not route.forbidden,
            f"This {band} cable lies in {runs}, which is not for {band}.",
            to_do="Take it another way, or fit a partition and name the run for both.",
            found=runs,
        )
