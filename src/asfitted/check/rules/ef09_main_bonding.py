"""EF-09: size of main bonding conductors."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.conductors import main_bonding_mm2
from asfitted.reference.site_limits import bonding_without_pme_mm2

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="EF-09",
    title="Size of main bonding conductors",
    clause=bs7671("544.1.1 and Table 54.8"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Size of main bonding conductors.

    What it checks. Each main bonding conductor is at least the size for the supply neutral.

    Why it matters on site. On a PME supply a lost neutral sends load current through these
    conductors.

    Bad. A water pipe bonded in 6 mm² on a TN-C-S supply.

    Good. 10 mm² there.

    To put it right. Replace the conductor by one of the size asked for.

    Source. BS 7671 411.3.1.2 and 544.1.1; Table 54.8 for PME, else half the earthing conductor.
    """
    supply = job.installation.supply
    if supply is None:
        return
    if not supply.bonds:
        yield job.not_checked(
            "supply",
            "no main bonding is recorded",
            to_do="List what is bonded, or write that nothing extraneous comes in.",
        )
    least = None
    if supply.tails_mm2 is not None:
        look_up = main_bonding_mm2 if supply.system == "TN-C-S" else bonding_without_pme_mm2
        least = look_up(supply.tails_mm2).value
    for what, size_mm2 in supply.bonds:
        yield job.at_least(
            "supply",
            what=f"bonding of the {what}",
            found=size_mm2,
            limit_is=f"the least for tails of that size on {supply.system}",
            limit=least,
            unit="mm²",
            to_do="Replace the conductor.",
        )
