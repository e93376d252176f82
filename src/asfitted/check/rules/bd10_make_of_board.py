"""BD-10: one make of device in a board."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.recorded import is_recorded
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="BD-10",
    title="One make of device in a board",
    clause=bs7671("536.4.203 and BS EN 61439"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """One make of device in a board.

    What it checks. The make group of a board is on record, so that new devices can be matched to
    it.

    Why it matters on site. A breaker of another make fits the rail and not the busbar; the board is
    then untested.

    Bad. New breakers in a board of which the make was not noted.

    Good. A board with its make group written down.

    To put it right. Read the label inside the door and write the make group.

    Source. BS 7671 536.4.203 and BS EN 61439-3: only devices the assembly was verified with.
    """
    for board in job.installation.boards.values():
        if board.state == "removed":
            continue
        if is_recorded(board.make_group):
            yield job.passes(board.tag)
        else:
            yield job.not_checked(
                board.tag,
                "its make group is not recorded, so mixed makes cannot be ruled out",
                to_do="Read the label inside the door and write the make group.",
            )
