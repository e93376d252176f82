"""BD-06: every way says what it feeds."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.recorded import is_recorded
from asfitted.check.registry import rule
from asfitted.reference.site_limits import vague_names

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="BD-06",
    title="Every way says what it feeds",
    clause=bs7671("514.8.1 and 514.9.1"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Every way says what it feeds.

    What it checks. The name and place of a circuit tell a stranger which one it is.

    Why it matters on site. "Sockets" on four ways means that the wrong one is switched off, sooner
    or later.

    Bad. A way called "sockets" with no place.

    Good. "Bench socket-outlets", or "sockets" with the place "first-floor office".

    To put it right. Say what it feeds and where.

    Source. BS 7671 514.8.1 (identification of devices) and 514.9.1 (chart at the board).
    """
    vague = vague_names()
    for circuit, _ in job.circuits():
        name = " ".join(circuit.name.lower().split())
        yield job.holds(
            circuit.tag,
            bool(name) and (name not in vague or is_recorded(circuit.place)),
            f'The name "{circuit.name}" does not tell which one it is.',
            to_do="Say what it feeds and where.",
            found=circuit.name,
        )
