"""SU-06: length of the tails."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="SU-06",
    title="Length of the tails",
    clause=practice("BS 7671 434.3 and distributors' rules"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Length of the tails.

    What it checks. The tails from the meter to the first board are not longer than 3 m.

    Why it matters on site. Up to the first device the tails have only the distributor's fuse.

    Bad. 5.5 m of tails across the roof space.

    Good. 2 m of them.

    To put it right. Fit a switch-fuse by the meter, with the distributor's consent.

    Source. Distributors' practice.
    """
    supply = job.installation.supply
    if supply is None:
        return
    limit = site_limit("length of tails")
    yield job.at_most(
        "supply",
        what="length of the tails",
        found=supply.tails_m,
        limit_is="what distributors allow",
        limit=limit.value,
        unit="m",
        to_do="Fit a switch-fuse by the meter, with the distributor's consent.",
        known_by=limit.provenance,
    )
