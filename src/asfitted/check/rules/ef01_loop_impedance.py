"""EF-01: earth fault loop impedance."""

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
    id="EF-01",
    title="Earth fault loop impedance",
    clause=bs7671("411.4.4 and Tables 41.2 to 41.4"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Earth fault loop impedance.

    What it checks. Zs at the far end is not more than the device allows for its disconnection time.

    Why it matters on site. With too high a Zs the device acts late, and metalwork stays live in
    somebody's hand.

    Bad. 2.1 Ω on a B32, which allows 1.37 Ω.

    Good. 0.9 Ω there.

    To put it right. Use a larger cable or cpc, another type of device, or an RCD for fault
    protection.

    Source. BS 7671 411.4.4, Zs ≤ Cmin U0 / Ia; Tables 41.2, 41.3, 41.4.
    """
    for circuit, result in job.surveyed_circuits():
        source = result.zs_limit_source if result else "its device"
        yield job.at_most(
            circuit.tag,
            what="earth fault loop impedance Zs",
            found=result.zs_ohm if result else None,
            limit_is=f"the most for its {circuit.device.words} ({source})",
            limit=result.zs_limit_ohm if result else None,
            unit="Ω",
            to_do="Use a larger cable or cpc, another type of device, or an RCD.",
        )
