"""TR-08: readings at the origin are as designed for."""

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
    id="TR-08",
    title="Readings at the origin as designed for",
    clause=bs7671("313.1 and 643.7.3"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Readings at the origin as designed for.

    What it checks. Ze and fault current as read are not more than the figures of the design.

    Why it matters on site. Every Zs and every breaking capacity of the job rests on these two.

    Bad. Ze read as 0.5 Ω where the design took 0.35 Ω.

    Good. 0.3 Ω read there.

    To put it right. Put the figure read into the job and run again.

    Source. BS 7671 313.1: characteristics of the supply are found by measurement or enquiry.
    """
    supply, readings = job.installation.supply, job.installation.readings
    if supply is None or readings is None or readings.supply is None:
        return
    pairs = (
        ("Ze", readings.supply.ze_ohm, supply.ze_ohm, "Ω"),
        ("prospective fault current", readings.supply.fault_ka, supply.ipf_ka, "kA"),
    )
    for what, found, given, unit in pairs:
        if found is None or found.value is None:
            continue
        yield job.at_most(
            "supply",
            what=f"{what} as read",
            found=found.value,
            limit_is="what the design took",
            limit=given.value if given else None,
            unit=unit,
            to_do="Put the figure read into the job and run again.",
        )
