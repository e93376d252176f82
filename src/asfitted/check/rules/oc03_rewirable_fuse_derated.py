"""OC-03: rewirable fuse within 0.725 of cable capacity."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.protection import rated_as_laid
from asfitted.check.registry import rule
from asfitted.reference.devices import overload_factor

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="OC-03",
    title="Rewirable fuse within 0.725 of cable capacity",
    clause=bs7671("433.1.202"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Rewirable fuse within 0.725 of cable capacity.

    What it checks. A device that needs 2 In to operate is not more than 0.725 of the capacity Iz.

    Why it matters on site. A BS 3036 fuse melts so late that the cable would carry twice its rating
    for hours.

    Bad. A 30 A rewirable fuse on a cable that may carry 36 A: 0.725 of it is 26 A.

    Good. The same fuse on a cable that may carry 47 A, or a 32 A breaker on the 36 A cable.

    To put it right. Replace the fuse by a breaker, or fit a larger cable.

    Source. BS 7671 433.1.202; all other listed devices keep I2 ≤ 1.45 Iz once In ≤ Iz.
    """
    for circuit, cable, result in job.power_cables():
        factor = overload_factor(circuit.device.standard)
        if factor.value >= 1 or circuit.ring:
            continue  # a ring behind a fuse goes by 433.1.204: OC-13
        # the capacity where it runs has the factor for the fuse in it where Cc was applied
        applied = result is not None and any(one.symbol == "Cc" for one in result.factors)
        share = 1.0 if applied else factor.value
        within = job.at_most(
            cable.tag,
            what=f"rating of the {circuit.device.words} at {circuit.tag}",
            found=circuit.device.rating_a,
            limit_is="the corrected capacity Iz, with 0.725 for the fuse"
            if applied
            else f"{factor.value:g} of the corrected capacity Iz",
            limit=result.capacity_a * share if result else None,
            unit="A",
            to_do="Replace the fuse by a breaker, or fit a larger cable.",
        )
        yield rated_as_laid(job, within, result)
