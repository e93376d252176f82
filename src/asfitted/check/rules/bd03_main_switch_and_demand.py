"""BD-03: main switch carries the demand."""

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
    id="BD-03",
    title="Main switch carries the demand",
    clause=bs7671("512.1.2 and 311.1"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Main switch carries the demand.

    What it checks. The demand of a board, after diversity, is within its main switch.

    Why it matters on site. A main switch has no overload release: it just gets hot.

    Bad. 112 A of demand on a 100 A main switch.

    Good. 54 A of demand on it.

    To put it right. Move load to another board, or fit a larger switch and board.

    Source. BS 7671 512.1.2 and 311.1.
    """
    for board in job.installation.boards.values():
        if board.main_switch is None:
            continue  # IS-03 says that it is not recorded
        result = job.results.boards.get(board.tag)
        yield job.at_most(
            board.tag,
            what="demand of the fullest line",
            found=max(result.demand_a) if result else None,
            limit_is=f"its main switch {board.main_switch.words}",
            limit=board.main_switch.rating_a,
            unit="A",
            to_do="Move load to another board, or fit a larger switch and board.",
        )
