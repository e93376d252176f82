"""CF-05: every cable has a way."""

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
    id="CF-05",
    title="Every cable has a way",
    clause=bs7671("521 and 522"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Every cable has a way.

    What it checks. A permitted way was found for every cable from one end to the other.

    Why it matters on site. A cable without a way gets one on the day, down the wall and across the
    doorway.

    Bad. A socket-outlet on wall D with the only power tray on walls A and B, and nothing between.

    Good. The tray carried on over wall C to wall D.

    To put it right. Extend the containment, name a run with via, or say at which height it is
    clipped.

    Source. BS 7671 521 and 522: each wiring system is chosen for its route.
    """
    for tag in job.installation.cables:
        route = job.results.routes.get(tag)
        if route is None:
            yield job.not_checked(
                tag, "no way was worked out for this cable", to_do="Give both its ends a place."
            )
            continue
        yield job.holds(
            tag,
            not route.broken,
            f"No way for this cable: {route.broken}.",
            to_do="Extend the containment, name a run with via, or clip it at a stated height.",
        )
