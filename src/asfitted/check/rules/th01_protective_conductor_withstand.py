"""TH-01: protective conductor survives a fault."""

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
    id="TH-01",
    title="Protective conductor survives a fault",
    clause=bs7671("543.1.3 and 434.5.2"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Protective conductor survives a fault.

    What it checks. The cpc is not smaller than the adiabatic sum asks for.

    Why it matters on site. A cpc that melts during a fault leaves the metalwork live with nothing
    to clear it.

    Bad. A 1.5 mm² cpc where the sum asks for 1.8 mm².

    Good. A 2.5 mm² cpc there.

    To put it right. Use a cable with a larger cpc, or a device that lets less energy through.

    Source. BS 7671 543.1.3, S ≥ √(I²t) / k; k of Tables 54.2 to 54.4.
    """
    for circuit, result in job.surveyed_circuits():
        yield job.at_least(
            circuit.tag,
            what="size of the cpc",
            found=result.cpc_has_mm2 if result else None,
            limit_is="the adiabatic sum asks",
            limit=result.cpc_needed_mm2 if result else None,
            unit="mm²",
            to_do="Use a larger cpc, or a device that lets less energy through.",
        )
