"""OC-09: lighting circuit device not above 16 A."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="OC-09",
    title="Lighting circuit device not above 16 A",
    clause=bs7671("559.5.1"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Lighting circuit device not above 16 A.

    What it checks. The device of a lighting circuit is not rated above 16 A.

    Why it matters on site. Small lampholders and lighting accessories are not made for more.

    Bad. A B20 on the lights of a hall.

    Good. A B6 or B10.

    To put it right. Fit a smaller device, or show that every accessory is rated for more.

    Source. BS 7671 559.5.1 (lampholders on circuits up to 16 A).
    """
    limit = site_limit("lampholder circuit device")
    for circuit, _ in job.circuits():
        if circuit.use == "lighting":
            yield job.at_most(
                circuit.tag,
                what=f"rating of its {circuit.device.words}",
                found=circuit.device.rating_a,
                limit_is="the most for small lampholders",
                limit=limit.value,
                unit="A",
                to_do="Fit a smaller device, or show that every accessory is rated for more.",
                known_by=limit.provenance,
            )
