"""SU-01: supply figures on record."""

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
    id="SU-01",
    title="Supply figures on record",
    clause=bs7671("313.1"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Supply figures on record.

    What it checks. Ze, fault current and cut-out of the supply are known, and not just assumed.

    Why it matters on site. Every later figure of shock and fault protection hangs on these three.

    Bad. A supply of which Ze was never measured.

    Good. Ze 0.15 Ω measured, 4.2 kA measured, 100 A cut-out declared.

    To put it right. Measure at the origin, or get the distributor's figures in writing.

    Source. BS 7671 313.1: by enquiry, calculation, measurement or inspection.
    """
    supply = job.installation.supply
    if supply is None:
        return
    for what, known in (("Ze", supply.ze_ohm), ("fault current", supply.ipf_ka)):
        if known is None:
            yield job.not_checked(
                "supply",
                f"{what} at the origin is not recorded",
                to_do="Measure it, or get the distributor's figure in writing.",
            )
        else:
            yield job.holds(
                "supply",
                known.basis != "assumed",
                f"{what} of {known.value:g} {known.unit} is only assumed.",
                to_do="Measure it, or get the distributor's figure in writing.",
                found="assumed",
            )
    if supply.cut_out is None:
        yield job.not_checked(
            "supply", "the cut-out is not recorded", to_do="Read the label, or ask the distributor."
        )
    else:
        yield job.passes("supply")
