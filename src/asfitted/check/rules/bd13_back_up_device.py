"""BD-13: back-up device of the board."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.protection import devices_before, has_its_back_up
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="BD-13",
    title="Back-up device of the board",
    clause=bs7671("536.4.203 and BS EN 61439"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Back-up device of the board.

    What it checks. Where a board's short-circuit rating rests on a device before it, that device
    or a smaller one of the same standard is there.

    Why it matters on site. A rating "with a 100 A fuse" is worth nothing behind a 200 A one: the
    board may burst.

    Bad. A board rated with a 63 A BS 88-3 fuse behind a 100 A one.

    Good. A board rated with a 100 A BS 88-3 fuse behind one of 100 A or less.

    To put it right. Fit the device that the maker names, or a board rated without one.

    Source. BS 7671 536.4.203; BS EN 61439-1, rated conditional short-circuit current Icc.
    """
    for board in job.installation.boards.values():
        if board.back_up is None:
            continue
        before = devices_before(job.installation, board.tag)
        if not before:
            yield job.not_checked(
                board.tag,
                "the device before the board is not recorded, so its back-up is not proved",
                to_do="Write the cut-out, or the circuit that feeds the board.",
            )
            continue
        there = " and ".join(f"{where} ({device.words})" for where, device in before)
        yield job.holds(
            board.tag,
            has_its_back_up(job.installation, board),
            f"Its rating rests on a {board.back_up.words}, but before it are {there}.",
            to_do="Fit the device that the maker names, or a board rated without one.",
        )
