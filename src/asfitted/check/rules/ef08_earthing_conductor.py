"""EF-08: size of the earthing conductor."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.conductors import minimum_cpc_by_table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="EF-08",
    title="Size of the earthing conductor",
    clause=bs7671("542.3 and Table 54.7"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Size of the earthing conductor.

    What it checks. The earthing conductor is not smaller than Table 54.7 asks for the tails.

    Why it matters on site. It carries the whole fault current of the site.

    Bad. 6 mm² with 25 mm² tails.

    Good. 16 mm² with 25 mm² tails.

    To put it right. Replace it, or show the smaller size by the adiabatic sum with the cut-out
    fuse.

    Source. BS 7671 542.3.1 and 543.1.4, Table 54.7.
    """
    supply = job.installation.supply
    if supply is None:
        return
    tails = supply.tails_mm2
    least = minimum_cpc_by_table(tails).value if tails is not None else None
    yield job.at_least(
        "supply",
        what="earthing conductor",
        found=supply.earthing_conductor_mm2,
        limit_is=f"Table 54.7 asks with {tails:g} mm² tails"
        if tails
        else "the size that the tails ask for",
        limit=least,
        unit="mm²",
        to_do="Replace it, or show the smaller size by the adiabatic sum.",
    )
