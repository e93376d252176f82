"""SG-04: copper data cables that leave the building."""

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
    id="SG-04",
    title="Copper data cables that leave the building",
    clause=bs7671("443, 534 and BS EN 50310"),
    severity=Severity.NOTE,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Copper data cables that leave the building.

    What it checks. A copper data cable that ends outside is noted for surge protection.

    Why it matters on site. Lightning two fields away takes the recorder through the gate camera's
    cable.

    Bad. Cat6 to a camera at a gate 58 m away, with nothing at either end.

    Good. Cameras inside only, or fibre to the gate.

    To put it right. Fit surge devices at both ends with short leads to the earth bar, or use fibre.

    Source. BS 7671 443 and 534; bonding to BS EN 50310.
    """
    for result in job.results.data.values():
        where = job.installation.data_devices[result.tag].position
        outdoors = where.outside or bool(where.end_of)
        yield job.holds(
            result.tag,
            not outdoors,
            f"Its {result.medium} cable leaves the building: surge protection is not recorded.",
            to_do="Fit surge devices at both ends with short leads to earth, or use fibre.",
            found=where.words,
        )
