"""OC-13: ring final circuit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.protection import rated_as_laid
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection

LARGEST_DEVICE_A = 32.0
LEAST_CAPACITY_A = 20.0
LEAST_SIZE_MM2 = 2.5


@rule(
    id="OC-13",
    title="Ring final circuit",
    clause=bs7671("433.1.204"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Ring final circuit.

    What it checks. A ring is behind a device of at most 32 A, of 2.5 mm² cable at least, and every
    cable of it may carry 20 A where it lies.

    Why it matters on site. A ring cable is thinner than its device allows, because the load comes
    two ways; a piece in insulation or in a full conduit no longer stands its half.

    Bad. A B32 ring whose 2.5 mm² cable may carry 13.5 A in the loft insulation.

    Good. The same ring clipped to the joists, where it may carry 27 A.

    To put it right. Reroute the piece that limits it, use 4 mm² cable, or make two radials.

    Source. BS 7671 433.1.204; 1.5 mm² for mineral insulated cable is not used here.
    """
    for circuit, _ in job.surveyed_circuits():
        if not circuit.ring:
            continue
        yield job.at_most(
            circuit.tag,
            what=f"rating of its {circuit.device.words}",
            found=circuit.device.rating_a,
            limit_is="the most for a ring",
            limit=LARGEST_DEVICE_A,
            unit="A",
            to_do="Fit a device of 30 A or 32 A, or make radial circuits.",
        )
        for tag in circuit.cables:
            result = job.results.cables.get(tag)
            enough = job.at_least(
                tag,
                what="corrected capacity Iz of a ring cable",
                found=result.capacity_a if result else None,
                limit_is="what a ring needs",
                limit=LEAST_CAPACITY_A,
                unit="A",
                to_do="Reroute the piece that limits it, or use the next size of cable.",
            )
            yield rated_as_laid(job, enough, result)
            yield job.at_least(
                tag,
                what="size of a ring cable",
                found=result.csa_mm2 if result else None,
                limit_is="the least for a ring",
                limit=LEAST_SIZE_MM2,
                unit="mm²",
                to_do="Use 2.5 mm² cable or larger.",
            )
