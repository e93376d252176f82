"""EF-05: TT circuits have an RCD for fault protection."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.protection import rcds_before
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="EF-05",
    title="TT circuits have an RCD for fault protection",
    clause=bs7671("411.5.2 and 411.5.3"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """TT circuits have an RCD for fault protection.

    What it checks. On a TT system every circuit has an RCD somewhere before it.

    Why it matters on site. An earth electrode never lets enough current flow to trip a breaker or a
    fuse.

    Bad. A C16 SP on a TT supply with no RCD before the board.

    Good. The same circuit on an RCBO, or behind a delayed RCD as main switch.

    To put it right. Fit RCBOs, or a time-delayed RCD as main switch with RCBOs after it.

    Source. BS 7671 411.5.2: an RCD is preferred for fault protection in TT systems.
    """
    supply = job.installation.supply
    if supply is None or supply.system != "TT":
        return
    for circuit, _ in job.circuits():
        yield job.holds(
            circuit.tag,
            bool(rcds_before(job.installation, circuit)),
            f"TT supply, and no RCD before {circuit.device.words}.",
            to_do="Fit an RCBO here or a delayed RCD before the board.",
            found="none",
        )
