"""BD-09: balance of the lines at the origin."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="BD-09",
    title="Balance of the lines at the origin",
    clause=practice("BS 7671 314 and Appendix 4, 5.5"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Balance of the lines at the origin.

    What it checks. On a board at the origin no line lies more than 20 % off the mean demand.

    Why it matters on site. One line at its limit while the others idle: the fuse blows with power
    to spare.

    Bad. 54 A, 20 A and 18 A on L1, L2 and L3.

    Good. 32 A, 30 A and 29 A.

    To put it right. Move single-phase ways to the empty line.

    Source. Trade practice for three-phase boards.
    """
    limit = site_limit("imbalance of line currents")
    for board in job.installation.boards.values():
        result = job.results.boards.get(board.tag)
        if board.phases == 3 and board.fed_by == "supply":
            yield job.at_most(
                board.tag,
                what="imbalance of its lines",
                found=result.imbalance_pct if result else None,
                limit_is="what trade practice allows",
                limit=limit.value,
                unit="%",
                to_do="Move single-phase ways to the line with the least on it.",
            )
