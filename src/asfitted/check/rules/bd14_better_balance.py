"""BD-14: better balance within reach."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="BD-14",
    title="Better balance within reach",
    clause=practice("BS 7671 314 and Appendix 4, 5.5"),
    severity=Severity.NOTE,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Better balance within reach.

    What it checks. New single-phase ways of a three-phase board could not be spread over the lines
    with a clearly smaller imbalance.

    Why it matters on site. Before the board is wired a circuit moves for nothing; afterwards it
    costs a shutdown.

    Bad. 54 A, 20 A and 18 A, with two 17 A circuits on L1 that fit blank poles of L2 and L3.

    Good. 37 A, 37 A and 18 A, and nothing left that may be moved.

    To put it right. Put the circuits named on the lines named, or leave them and say why.

    Source. Trade practice; existing circuits are left where they are.
    """
    for board in job.installation.boards.values():
        result = job.results.boards.get(board.tag)
        if board.phases != 3 or result is None:
            continue
        after = result.imbalance_after_pct
        if not result.moves or after is None:
            yield job.passes(board.tag)
            continue
        moves = ", ".join(f"{tag} from {now} to {then}" for tag, now, then in result.moves)
        yield job.fails(
            board.tag,
            f"Imbalance of its lines falls from {result.imbalance_pct:.0f} % to {after:.0f} % "
            f"with {moves}.",
            to_do="Put these circuits on the lines named, or leave them and say why.",
            found=f"{result.imbalance_pct:.0f} %",
        )
