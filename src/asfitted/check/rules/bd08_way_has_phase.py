"""BD-08: each way of a three-phase board has its phase."""

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
    id="BD-08",
    title="Each way of a three-phase board has its phase",
    clause=bs7671("514.9.1 and 314"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Each way of a three-phase board has its phase.

    What it checks. A circuit on a three-phase board says on which line it is.

    Why it matters on site. Without it nobody can balance the board, or tell where 400 V stands
    between neighbours.

    Bad. Way 4 of a three-phase board without L1, L2, L3 or TP.

    Good. Way 4L2.

    To put it right. Write the phase into the way, such as 4L2 or 4TP.

    Source. BS 7671 514.9.1 (chart) and 314.
    """
    for circuit, _ in job.circuits():
        board = job.installation.boards[circuit.board]
        if board.phases == 3:
            yield job.holds(
                circuit.tag,
                bool(circuit.phase),
                f"Way {circuit.way} of three-phase board {board.tag} does not say its line.",
                to_do="Write the phase into the way, such as 4L2 or 4TP.",
                found="none",
            )
