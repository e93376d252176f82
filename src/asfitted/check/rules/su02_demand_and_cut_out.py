"""SU-02: maximum demand within the cut-out."""

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
    id="SU-02",
    title="Maximum demand within the cut-out",
    clause=bs7671("311.1"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Maximum demand within the cut-out.

    What it checks. The demand of the fullest line, after diversity, is within the cut-out fuse.

    Why it matters on site. The distributor's fuse blows on the coldest day, and only they may
    replace it.

    Bad. 112 A of demand behind a 100 A cut-out.

    Good. 82 A of demand behind it.

    To put it right. Stagger the loads, or apply for a larger supply before the work starts.

    Source. BS 7671 311.1 and 132.3.
    """
    supply = job.installation.supply
    if supply is None:
        return
    yield job.at_most(
        "supply",
        what="maximum demand of the fullest line",
        found=job.results.max_demand_a,
        limit_is=f"the cut-out {supply.cut_out.words}" if supply.cut_out else "the cut-out",
        limit=supply.cut_out.rating_a if supply.cut_out else None,
        unit="A",
        to_do="Stagger the loads, or apply for a larger supply before the work starts.",
    )
