"""TH-03: least size of line conductors."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="TH-03",
    title="Least size of line conductors",
    clause=bs7671("524.1 and Table 52.3"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Least size of line conductors.

    What it checks. No line conductor is smaller than the least for its use.

    Why it matters on site. Thin wires break in terminals.

    Bad. A power circuit in 1.0 mm².

    Good. A power circuit in 1.5 mm².

    To put it right. Use the next size of cable.

    Source. BS 7671 524.1 and Table 52.3: copper, 1.0 mm² for lighting, 1.5 mm² for power.
    """
    for circuit, cable, result in job.power_cables():
        use = "lighting" if circuit.use == "lighting" else "power"
        limit = site_limit(f"least line conductor {use}")
        yield job.at_least(
            cable.tag,
            what="size of the line conductor",
            found=result.csa_mm2 if result else cable.csa_mm2,
            limit_is=f"the least for {use}",
            limit=limit.value,
            unit="mm²",
            to_do="Use the next size of cable.",
            known_by=limit.provenance,
        )
