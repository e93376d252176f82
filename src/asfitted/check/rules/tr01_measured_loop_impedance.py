"""TR-01: measured loop impedance within its limit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.readings import read_circuits
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="TR-01",
    title="Measured loop impedance within its limit",
    clause=bs7671("411.4.4 and 643.7.3"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Measured loop impedance within its limit.

    What it checks. Zs as measured is not more than the device allows for its disconnection time.

    Why it matters on site. The reading is the truth: with too high a Zs the device acts late.

    Bad. 1.5 Ω read on a circuit whose device allows 1.37 Ω.

    Good. 0.9 Ω read there.

    To put it right. Look for a poor joint, a wrong length or a wrong device; then test again.

    Source. BS 7671 411.4.4, Zs ≤ Cmin U0 / Ia.
    """
    for circuit, result, reading in read_circuits(job):
        if reading.zs_ohm is None or reading.zs_ohm.value is None:
            continue  # TR-07 says what was not read
        yield job.at_most(
            circuit.tag,
            what="measured loop impedance Zs",
            found=reading.zs_ohm.value,
            limit_is=f"the most for its {circuit.device.words}",
            limit=result.zs_limit_ohm if result else None,
            unit="Ω",
            to_do="Look for a poor joint, a wrong length or a wrong device; test again.",
        )
