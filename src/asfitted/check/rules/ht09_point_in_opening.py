"""HT-09: nothing mounted in a door or window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.openings import opening_at
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="HT-09",
    title="Nothing mounted in a door or window",
    clause=bs7671("512.2 and 513.1"),
    severity=Severity.ERROR,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Nothing mounted in a door or window.

    What it checks. No board, point or data device is placed inside a door or window.

    Why it matters on site. It was measured from the wrong end of the wall.

    Bad. A switch 1.0 m along a wall whose door runs from 0.6 to 1.5 m.

    Good. The same switch 1.75 m along.

    To put it right. Measure again from the left end of the wall, seen from inside.

    Source. Plain geometry of the wall.
    """
    things = (job.installation.boards, job.installation.points, job.installation.data_devices)
    for group in things:
        for tag, thing in group.items():
            spot = thing.position
            wall = job.installation.walls.get(spot.wall)
            if wall is None or spot.out_mm > 0:
                continue
            gap = opening_at(wall, spot.along_mm, spot.up_mm)
            yield job.holds(
                tag,
                gap is None,
                f"It sits in the {gap.name if gap else 'opening'} of {wall.name}.",
                to_do="Measure again from the left end of the wall, seen from inside.",
                found=spot.words,
            )
