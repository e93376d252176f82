"""BD-01: short-circuit rating of the board."""

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
    id="BD-01",
    title="Short-circuit rating of the board",
    clause=bs7671("536.4 and BS EN 61439"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Short-circuit rating of the board.

    What it checks. The board as an assembly stands the greatest fault current at its busbars.

    Why it matters on site. Busbars that are not braced for the current bend and burst the cover.

    Bad. A 6 kA board where 9 kA may flow.

    Good. A 10 kA board there.

    To put it right. Read the rating plate; fit a board rated for it.

    Source. BS 7671 536.4.201 and 434.5.1; BS EN 61439-3, Icc or Icw.
    """
    for board in job.installation.boards.values():
        result = job.results.boards.get(board.tag)
        worst_ka = (result.fault_max_3ph_ka or result.fault_max_1ph_ka) if result else None
        yield job.at_least(
            board.tag,
            what="short-circuit rating of the board",
            found=board.short_circuit_rating_ka,
            limit_is="the greatest fault current there",
            limit=worst_ka,
            unit="kA",
            to_do="Read the rating plate; fit a board rated for it.",
        )
