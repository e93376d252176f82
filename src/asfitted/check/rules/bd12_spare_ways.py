"""BD-12: room for later circuits."""

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
    id="BD-12",
    title="Room for later circuits",
    clause=practice("BS 7671 132.3"),
    severity=Severity.NOTE,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Room for later circuits.

    What it checks. A board has at least one way left.

    Why it matters on site. The next job otherwise starts with a new board.

    Bad. A 4-way board with four ways used.

    Good. A 12-way board with ten used.

    To put it right. Think about the next size of board while it is cheap.

    Source. Trade practice.
    """
    for board in job.installation.boards.values():
        result = job.results.boards.get(board.tag)
        if result is not None:
            yield job.at_least(
                board.tag,
                what="spare ways",
                found=result.ways_total - result.ways_used,
                limit_is="what the next job needs",
                limit=1,
                unit="",
                to_do="Think about the next size of board.",
            )
