"""EF-04: RCD type AC only where no d.c. can flow."""

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
    id="EF-04",
    title="RCD type AC only where no d.c. can flow",
    clause=bs7671("531.3.3"),
    severity=Severity.WARNING,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """RCD type AC only where no d.c. can flow.

    What it checks. No RCD is of type AC, blind to the d.c. that electronic loads leak.

    Why it matters on site. A type AC RCD may not trip at all once a drive or charger has leaked
    d.c. through it.

    Bad. RCBO C10 30 mA type AC on socket-outlets.

    Good. RCBO C10 30 mA type A.

    To put it right. Fit type A, or F or B where the maker of the load asks for it.

    Source. BS 7671 531.3.3: type AC only for fixed loads known to have no d.c. part.
    """
    own = [(c.tag, c.device.words, c.device.rcd) for c, _ in job.circuits()]
    own += [(p.tag, p.words, p.rcd) for _, p in job.points()]
    for board in job.installation.boards.values():
        if board.main_switch:
            own.append((board.tag, board.main_switch.words, board.main_switch.rcd))
    for tag, words, rcd in own:
        if rcd is None:
            continue
        message = f"{words} is of type AC." if rcd.type else f"The type of {words} is not stated."
        yield job.holds(
            tag,
            rcd.type not in {"", "AC"},
            message,
            to_do="Fit type A, or F or B where the maker of the load asks for it.",
            found=rcd.type,
        )
