"""HT-07: containment clear of doors and windows."""

from __future__ import annotations

import itertools
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
    id="HT-07",
    title="Containment clear of doors and windows",
    clause=bs7671("522.6 and 513.1"),
    severity=Severity.ERROR,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Containment clear of doors and windows.

    What it checks. No straight piece of containment crosses a door or window.

    Why it matters on site. It cannot be built, and on the day it goes somewhere nobody checked.

    Bad. A tray at 2.4 m along a wall with a roller door 2.8 m high.

    Good. The same tray at 3.0 m.

    To put it right. Raise the run above the opening, or take it another way.

    Source. Plain geometry of the wall; BS 7671 522.6 for the damage.
    """
    for run in job.installation.containment.values():
        for number, (start, end) in enumerate(itertools.pairwise(run.path), 1):
            wall = job.installation.walls.get(run.walls[number - 1])
            if wall is None:
                continue
            gap = opening_crossed(wall, start, end)
            yield job.holds(
                run.tag,
                gap is None,
                f"Piece {number} on {wall.name} crosses the {gap.name if gap else 'opening'}.",
                to_do="Raise the run above the opening, or take it another way.",
            )
