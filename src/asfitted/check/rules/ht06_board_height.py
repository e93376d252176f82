"""HT-06: board within reach."""

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
    id="HT-06",
    title="Board within reach",
    clause=practice("BS 7671 513.1 and 132.12"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Board within reach.

    What it checks. The top of a board is not above 2 m and its middle is between 0.6 and 1.9 m.

    Why it matters on site. Whoever resets a breaker does it in the dark, one-handed, with a torch.

    Bad. A board whose top is 2.3 m up.

    Good. A board whose top is 1.9 m up.

    To put it right. Lower the board.

    Source. BS 7671 513.1 (accessible); the figures are trade practice.
    """
    top = site_limit("top of board")
    low, high = site_limit("lowest board handle"), site_limit("highest board handle")
    for board in job.installation.boards.values():
        if board.state == "removed":
            continue
        if board.position.end_of:
            yield job.not_checked(
                board.tag,
                f"its height at the end of {board.position.end_of} is not recorded",
                to_do="Measure it on site.",
            )
            continue
        up_mm = board.position.up_mm
        yield job.at_most(
            board.tag,
            what="height of its top",
            found=up_mm + board.height_mm / 2,
            limit_is="the highest in reach",
            limit=top.value,
            unit="mm",
            to_do="Lower the board.",
        )
        if not low.value <= up_mm <= high.value:
            yield job.fails(
                board.tag,
                f"Its middle is {up_mm:g} mm up, not {low.value:g} to {high.value:g} mm.",
                to_do="Move the board so that the handles are in reach.",
                found=f"{up_mm:g} mm",
            )
