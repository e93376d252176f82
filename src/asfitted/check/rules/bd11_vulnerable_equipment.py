"""BD-11: circuits with equipment vulnerable to tests."""

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
    id="BD-11",
    title="Circuits with equipment vulnerable to tests",
    clause=bs7671("514.9.1 (iv)"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Circuits with equipment vulnerable to tests.

    What it checks. For every circuit of a board it is on record what a test could damage.

    Why it matters on site. 500 V from an insulation tester ends the control board of a heater.

    Bad. A board with five circuits of which nothing is said.

    Good. Every circuit says "none" or names the thing.

    To put it right. Write vulnerable equipment, or "none", for each circuit.

    Source. BS 7671 514.9.1 (iv).
    """
    for board in job.installation.boards.values():
        own = job.circuits_of(board)
        silent = [c.tag for c in own if not is_recorded(c.vulnerable)]
        if silent:
            yield job.not_checked(
                board.tag,
                f"vulnerable equipment is not recorded for {', '.join(silent)}",
                to_do='Write what a 500 V test could damage, or "none", for each circuit.',
            )
        elif own:
            yield job.passes(board.tag)
