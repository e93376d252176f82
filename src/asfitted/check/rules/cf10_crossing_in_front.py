"""CF-10: which of two that cross passes in front."""

from __future__ import annotations

from collections import defaultdict
from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.crossings import crossings
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.crossings import Crossing
    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CF-10",
    title="Crossings: which passes in front",
    clause=practice("Plain geometry of the wall"),
    severity=Severity.NOTE,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Crossings: which passes in front.

    What it checks. Where a run crosses another run or cables on one wall, the stand-offs from the
    wall say which passes in front, and clear of the other.

    Why it matters on site. Two trays at one depth cannot cross: whoever comes second cuts one, or
    waits for longer brackets.

    Bad. A basket that crosses an upright tray, both straight on the wall.

    Good. The basket with `stand-off: 150 mm`, so that the 50 mm deep tray passes behind it.

    To put it right. Say `stand-off` of the run in front, and order brackets of that reach.

    Source. Plain geometry of the wall; trade practice.
    """
    open_at: dict[str, list[Crossing]] = defaultdict(list)
    for crossing in crossings(job.installation, job.results.routes):
        if not crossing.is_told:
            open_at[crossing.run.tag].append(crossing)
    for run in job.installation.containment.values():
        if run.state == "removed" or not any(run.walls):
            continue
        found = open_at.get(run.tag, [])
        yield job.holds(
            run.tag,
            not found,
            f"It crosses {_words(found)}: say which passes in front, with its stand-off.",
            to_do="Say `stand-off` of the run that passes in front; order brackets of that reach.",
            found=f"{len(found)} crossings",
        )


def _words(found: list[Crossing]) -> str:
    """Return what a run crosses, wall by wall: "T4 W09 W10 on D, T5 on B"."""
    walls: dict[str, dict[str, None]] = defaultdict(dict)
    for crossing in found:
        walls[crossing.wall][crossing.other.tag] = None
    return ", ".join(f"{' '.join(tags)} on {wall}" for wall, tags in walls.items())
