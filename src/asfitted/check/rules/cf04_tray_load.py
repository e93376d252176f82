"""CF-04: weight of cables on tray."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.site_limits import tray_planning_load_kg_m

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CF-04",
    title="Weight of cables on tray",
    clause=practice("BS EN 61537"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Weight of cables on tray.

    What it checks. The cables on a run weigh no more than the planning limit for medium duty.

    Why it matters on site. Tray sags between brackets long before it falls.

    Bad. 31 kg/m on medium duty tray at 1.5 m spans.

    Good. 12 kg/m there.

    To put it right. Read the maker's load graph for the span, or put brackets closer.

    Source. Trade planning limit at 1.5 m spans; the maker's graph to BS EN 61537 decides.
    """
    limit = tray_planning_load_kg_m()
    for result in job.results.containment.values():
        run = job.installation.containment[result.tag]
        if result.fullest and any(word in run.kind for word in ("tray", "basket", "ladder")):
            yield job.at_most(
                result.tag,
                what="weight of its cables",
                found=result.mass_kg_m,
                limit_is="the planning limit at 1.5 m spans",
                limit=limit.value,
                unit="kg/m",
                to_do="Read the maker's load graph for the span, or put brackets closer.",
            )
