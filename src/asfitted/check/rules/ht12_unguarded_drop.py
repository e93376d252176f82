"""HT-12: low drops of unarmoured cable guarded."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.cables import family
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="HT-12",
    title="Low drops of unarmoured cable guarded",
    clause=bs7671("522.6"),
    severity=Severity.WARNING,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Low drops of unarmoured cable guarded.

    What it checks. A drop of unarmoured power cable that reaches below 1.5 m is not just clipped.

    Why it matters on site. Trolleys, brooms and stacked stock wear through a sheath at knee height.

    Bad. Twin and earth clipped down the wall to a bench socket at 1.2 m.

    Good. The same in 20 mm steel conduit.

    To put it right. Put the drop in steel conduit, or use armoured cable.

    Source. A code of practice asks for a metal guard to 1.5 m; BS 7671 522.6 gives no figure.
    """
    limit = site_limit("non-armoured drop guarded to")
    for _, cable, _ in job.power_cables():
        route = job.results.routes.get(cable.tag)
        if route is None or family(cable.family).construction == "armoured":
            continue
        drops = [leg for leg in route.legs if leg.kind == "drop" and leg.enclosure == "clipped"]
        if drops:
            yield job.at_least(
                cable.tag,
                what="lowest height of its clipped drop",
                found=min(z for leg in drops for z in (leg.start.z, leg.end.z)),
                limit_is="the height up to which it needs a guard",
                limit=limit.value,
                unit="mm",
                to_do="Put the drop in steel conduit, or use armoured cable.",
                known_by=limit.provenance,
            )
