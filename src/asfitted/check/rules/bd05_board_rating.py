"""BD-05: board rated for its demand."""

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
    id="BD-05",
    title="Board rated for its demand",
    clause=bs7671("536.4 and BS EN 61439"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Board rated for its demand.

    What it checks. The demand of a board, after diversity, is within the rated current of the
    board.

    Why it matters on site. Busbars and links inside a small board are thinner than they look.

    Bad. 74 A of demand on a 63 A board.

    Good. 22 A of demand on it.

    To put it right. Move load to another board, or fit a larger board.

    Source. BS EN 61439-3, rated current of the assembly.
    """
    for board in job.installation.boards.values():
        result = job.results.boards.get(board.tag)
        yield job.at_most(
            board.tag,
            what="demand of the fullest line",
            found=max(result.demand_a) if result else None,
            limit_is="the rated current of the board",
            limit=board.rating_a,
            unit="A",
            to_do="Move load to another board, or fit a larger board.",
        )
