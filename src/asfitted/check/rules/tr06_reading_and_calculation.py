"""TR-06: readings agree with the calculation."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.figures import with_unit
from asfitted.check.finding import Severity
from asfitted.check.readings import read_circuits
from asfitted.check.registry import rule
from asfitted.reference.reading_limits import reading_band

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="TR-06",
    title="Readings agree with the calculation",
    clause=practice("Comparison of a reading with the figure for cold conductors"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Readings agree with the calculation.

    What it checks. R1 + R2 and Zs as read lie in a band round the figures for cold conductors.

    Why it matters on site. A reading far off shows another length, size or route, or a poor joint.

    Bad. 0.8 Ω read where 0.4 Ω was calculated.

    Good. 0.45 Ω read there.

    To put it right. Look at joints and length; put the drawing right if the cable is another one.

    Source. Common practice: up to 25 % + 0.1 Ω above, 40 % + 0.1 Ω below (parallel paths).
    """
    for circuit, _, reading in read_circuits(job):
        expected = job.results.expected.get(circuit.tag)
        if expected is None:
            continue  # BD-07 says that the cable is not on record
        pairs = (
            ("R1 + R2", reading.r1r2_ohm, expected.r1r2_ohm),
            ("Zs", reading.zs_ohm, expected.zs_ohm),
        )
        for what, found, calculated in pairs:
            if found is None or found.value is None or calculated is None:
                continue
            band = reading_band(calculated)
            yield job.holds(
                circuit.tag,
                band.least_ohm <= found.value <= band.most_ohm,
                f"{what} was read as {found.shown} Ω; "
                f"{with_unit(calculated, 'Ω')} was calculated for cold conductors.",
                to_do="Look at joints and length; put the drawing right if the cable is another.",
                found=found.shown,
            )
