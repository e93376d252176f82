"""TH-02: line conductor survives a fault."""

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
    id="TH-02",
    title="Line conductor survives a fault",
    clause=bs7671("434.5.2"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Line conductor survives a fault.

    What it checks. The energy let through in a fault is not more than k²S² of the line conductor.

    Why it matters on site. A short next to the board would otherwise burn the cable before the
    breaker opens.

    Bad. 38 000 A²s let into a 1.0 mm² conductor that stands 13 200 A²s.

    Good. The same let into 2.5 mm², which stands 82 600 A²s.

    To put it right. Use a larger cable, or a device of a better energy class.

    Source. BS 7671 434.5.2, I²t ≤ k²S²; k of Table 43.1.
    """
    for circuit, result in job.surveyed_circuits():
        yield job.at_most(
            circuit.tag,
            what="energy let through in a fault",
            found=result.line_energy_a2s if result else None,
            limit_is="k²S² of the line conductor",
            limit=result.line_withstand_a2s if result else None,
            unit="A²s",
            to_do="Use a larger cable, or a device of a better energy class.",
        )
