"""LB-02: old and new conductor colours."""

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
    id="LB-02",
    title="Old and new conductor colours",
    clause=bs7671("514.14.1"),
    severity=Severity.NOTE,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Old and new conductor colours.

    What it checks. A board with old and new circuits is noted for the two-colour notice.

    Why it matters on site. In the old colours black was neutral; in the new ones black is a line.

    Bad. An existing circuit and a new one in the same board.

    Good. A board with new circuits only.

    To put it right. Look inside; if red, yellow, blue and black are there, fix the notice.

    Source. BS 7671 514.14.1; what colours the old circuits have is not in the spec.
    """
    for board in job.installation.boards.values():
        states = {str(circuit.state) for circuit in job.circuits_of(board)}
        yield job.holds(
            board.tag,
            states != {"existing", "new"},
            "Old and new circuits in one board: conductors may be in two versions of colours.",
            to_do="Look inside; if old colours are there, fix the two-colour notice.",
        )
