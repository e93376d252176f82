"""OC-02: device within the capacity of the cable."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.protection import overload_protection, rated_as_laid
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection

RING_DEVICES_A = (30, 32)


@rule(
    id="OC-02",
    title="Device within the capacity of the cable",
    clause=bs7671("433.1.1"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Device within the capacity of the cable.

    What it checks. The rating In of the device is not more than the corrected capacity Iz of the
    cable. Where no table gives the capacity as the cable lies, as for flexible cable in conduit,
    the figure for free air can only show that the device is too large, never that it is right:
    "not checked".

    Why it matters on site. A cable that the device lets run hotter than it can stand fails years
    later, in the wall.

    Bad. A C40 on a 2.5 mm² cable that may carry 27 A where it lies.

    Good. A C40 on a 10 mm² cable that may carry 45 A there.

    To put it right. Use the next size of cable, a smaller device, or a cooler way for the cable.

    Source. BS 7671 433.1.1 (ii), In ≤ Iz; capacity tables and factors of Appendix 4. Rings behind
    30 A or 32 A go by 433.1.204.
    """
    for circuit, cable, result in job.power_cables():
        if circuit.ring and circuit.device.rating_a in RING_DEVICES_A:
            continue  # 433.1.204 stands in place of 433.1.1 there: OC-13
        rating_a, words = overload_protection(job.installation, circuit, cable)
        origin = "" if result is None or result.size_chosen else ", the size given in the spec"
        size = f" of {result.words}{origin}" if result else ""
        within = job.at_most(
            cable.tag,
            what=f"rating of the {words}",
            found=rating_a,
            limit_is=f"the corrected capacity Iz{size}",
            limit=result.capacity_a if result else None,
            unit="A",
            to_do="Use a larger cable, a smaller device, or a route with fewer cables beside it.",
        )
        yield rated_as_laid(job, within, result)
