"""SU-07: ze as usual for its system."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.site_limits import usual_ze_ohm

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="SU-07",
    title="Ze as usual for its system",
    clause=practice("On-Site Guide, declared values"),
    severity=Severity.WARNING,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Ze as usual for its system.

    What it checks. Ze is not above the greatest that distributors declare for the system.

    Why it matters on site. A high Ze is often a failing earth, not a long street.

    Bad. 0.62 Ω measured on a TN-C-S supply.

    Good. 0.15 Ω there.

    To put it right. Measure again with the bonding off, and call the distributor.

    Source. On-Site Guide: 0.35 Ω for TN-C-S, 0.8 Ω for TN-S.
    """
    supply = job.installation.supply
    if supply is None or supply.system == "TT" or supply.ze_ohm is None:
        return  # EF-06 judges the electrode of a TT system; SU-01 says that Ze is not recorded
    limit = usual_ze_ohm(supply.system)
    yield job.at_most(
        "supply",
        what="Ze",
        found=supply.ze_ohm.value,
        limit_is=f"the greatest usual for {supply.system}",
        limit=limit.value,
        unit="Ω",
        to_do="Measure again with the bonding off, and call the distributor.",
        known_by=limit.provenance,
    )
