"""BD-04: main switch guarded from before."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.protection import upstream_circuit
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="BD-04",
    title="Main switch guarded from before",
    clause=bs7671("536.4.202"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Main switch guarded from before.

    What it checks. The device before a board is not rated above the board's main switch.

    Why it matters on site. Nothing in the board itself stops the switch from carrying too much.

    Bad. A 63 A main switch behind a 100 A cut-out.

    Good. A 100 A main switch behind it.

    To put it right. Fit a larger main switch, or a smaller device before the board.

    Source. BS 7671 536.4.202.
    """
    supply = job.installation.supply
    for board in job.installation.boards.values():
        if board.main_switch is None:
            continue  # IS-03 says that it is not recorded
        feed = upstream_circuit(job.installation, board)
        before = feed.device if feed else supply.cut_out if supply else None
        yield job.at_least(
            board.tag,
            what=f"rating of its main switch {board.main_switch.words}",
            found=board.main_switch.rating_a,
            limit_is=f"the {before.words} before it" if before else "the device before it",
            limit=before.rating_a if before else None,
            unit="A",
            to_do="Fit a larger main switch, or a smaller device before the board.",
        )
