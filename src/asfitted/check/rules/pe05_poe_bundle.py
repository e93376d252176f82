"""PE-05: number of powered data cables together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.cctv import poe_bundle_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="PE-05",
    title="Number of powered data cables together",
    clause="BS EN 50174-2 and ISO/IEC TS 29125",
    severity=Severity.WARNING,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Number of powered data cables together.

    What it checks. No more than 24 powered data cables lie in one piece of containment.

    Why it matters on site. The ones in the middle of a bundle cannot get rid of their heat.

    Bad. 30 PoE cables in one basket.

    Good. 12 of them.

    To put it right. Split the bundle, or lay the cables loose and open.

    Source. A site standard for structured cabling: bundles of at most 24.
    """
    limit = poe_bundle_limit()
    devices = job.installation.data_devices
    powered = {r.cable for r in job.results.data.values() if devices[r.tag].poe_class is not None}
    for run in job.installation.containment:
        own = job.pieces_of(run)
        counts = {s.ident: len(powered.intersection(s.cables)) for s in own}
        fullest = max(counts, key=lambda ident: counts[ident], default="")
        if fullest and counts[fullest]:
            yield job.at_most(
                run,
                what=f"count of PoE cables together at {fullest}",
                found=counts[fullest],
                limit_is="the most in one bundle",
                limit=limit.value,
                unit="",
                to_do="Split the bundle, or lay the cables loose and open.",
                known_by=limit.provenance,
            )
