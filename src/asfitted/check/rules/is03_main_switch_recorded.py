"""IS-03: main switch of every board."""

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
    id="IS-03",
    title="Main switch of every board",
    clause=bs7671("462.1.201"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Main switch of every board.

    What it checks. Each board has a main switch on record.

    Why it matters on site. In an emergency one handle must make the board dead.

    Bad. A board without a main switch in the spec.

    Good. A board with a 63 A switch-disconnector.

    To put it right. Write the main switch as found, or fit one.

    Source. BS 7671 462.1.201: a main linked switch or circuit-breaker as near as practicable.
    """
    for board in job.installation.boards.values():
        if board.state == "removed":
            continue
        if board.main_switch is None:
            yield job.not_checked(
                board.tag,
                "its main switch is not recorded",
                to_do="Write the main switch as found, or fit one.",
            )
        else:
            yield job.passes(board.tag)
