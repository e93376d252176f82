"""OC-01: design current within the device."""

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
    id="OC-01",
    title="Design current within the device",
    clause=bs7671("433.1.1"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Design current within the device.

    What it checks. Design current Ib is not more than the rating In of the circuit's device.

    Why it matters on site. A device that is asked for more than its rating trips when the shop is
    busiest, or ages unseen.

    Bad. 18 kW of kiln, 26 A a line, on a C16 TP.

    Good. The same kiln on a C40 TP.

    To put it right. Fit a device of a higher rating and check the cable again, or split the load.

    Source. BS 7671 433.1.1 (i), Ib ≤ In.
    """
    for circuit, result in job.circuits():
        yield job.at_most(
            circuit.tag,
            what="design current Ib",
            found=result.design_current_a if result else None,
            limit_is=f"the rating of its {circuit.device.words}",
            limit=circuit.device.rating_a,
            unit="A",
            to_do="Fit a higher rating and check the cable again, or split the load.",
        )
