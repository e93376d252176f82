"""EF-06: resistance of the earth electrode."""

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
    id="EF-06",
    title="Resistance of the earth electrode",
    clause=bs7671("411.5.3 and Table 41.5"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Resistance of the earth electrode.

    What it checks. On a TT system the electrode resistance is known and not above 200 Ω.

    Why it matters on site. A weak electrode dries out in summer, and then nothing trips.

    Bad. 340 Ω measured at one short rod.

    Good. 85 Ω measured.

    To put it right. Drive a longer or a second rod and measure again.

    Source. BS 7671 Table 41.5 note: above 200 Ω the resistance may not be stable.
    """
    supply = job.installation.supply
    if supply is None or supply.system != "TT":
        return
    limit = site_limit("stable electrode resistance")
    yield job.at_most(
        "supply",
        what="resistance of the earth electrode",
        found=supply.electrode_ohm.value if supply.electrode_ohm else None,
        limit_is="the most that is taken as stable",
        limit=limit.value,
        unit="Ω",
        to_do="Drive a longer or a second rod and measure again.",
        known_by=limit.provenance,
    )
