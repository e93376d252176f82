"""HT-08: clipped cables and drops clear of openings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.openings import opening_crossed
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="HT-08",
    title="Clipped cables and drops clear of openings",
    clause=bs7671("522.6 and 513.1"),
    severity=Severity.ERROR,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Clipped cables and drops clear of openings.

    What it checks. No clipped length or drop of a cable crosses a door or window.

    Why it matters on site. It cannot be fixed there, and on the day it goes somewhere nobody
    checked.

    Bad. A cable clipped at 1.5 m along a wall with a door in the way.

    Good. The same cable clipped at 2.4 m, above the door.

    To put it right. Clip it above the opening, or move the point.

    Source. Plain geometry of the wall; BS 7671 522.6 for the damage.
    """
    for route in job.results.routes.values():
        for leg in route.legs:
            wall = job.installation.walls.get(leg.wall)
            if wall is None or leg.kind not in {"drop", "clipped"}:
                continue
            gap = opening_crossed(wall, leg.start, leg.end)
            yield job.holds(
                route.cable,
                gap is None,
                f"Its {leg.kind} on {wall.name} crosses the {gap.name if gap else 'opening'}.",
                to_do="Clip it above the opening, or move the point.",
            )
