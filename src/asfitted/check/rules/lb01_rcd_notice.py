"""LB-01: RCD test notice."""

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
    id="LB-01",
    title="RCD test notice",
    clause=bs7671("514.12.2"),
    severity=Severity.NOTE,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """RCD test notice.

    What it checks. A board whose circuits have RCDs is noted for the six-monthly test notice.

    Why it matters on site. An RCD that is never pressed sticks.

    Bad. A board with an RCBO: the notice is owed.

    Good. A board without RCDs.

    To put it right. Fix the notice at the board and show the client the button.

    Source. BS 7671 514.12.2.
    """
    for board in job.installation.boards.values():
        own = job.circuits_of(board)
        points = [job.installation.points[tag] for c in own for tag in c.points]
        count = sum(c.device.rcd is not None for c in own) + sum(p.rcd is not None for p in points)
        yield job.holds(
            board.tag,
            count == 0,
            f"{count} {'RCDs' if count > 1 else 'RCD'} on its circuits: a test notice is owed.",
            to_do="Fix the six-monthly test notice at the board and show the client the button.",
            found=str(count),
        )
