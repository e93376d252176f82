"""TR-04: tripping time of the RCD."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.readings import rcd_of, read_circuits
from asfitted.check.registry import rule
from asfitted.reference.reading_limits import longest_trip_ms, shortest_trip_ms

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection

TO_DO = "Test it with its load off; if it still is slow, replace it."


@rule(
    id="TR-04",
    title="Tripping time of the RCD",
    clause=bs7671("643.8"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Tripping time of the RCD.

    What it checks. At its rated residual current an RCD trips in its time; one with delay waits.

    Why it matters on site. A slow RCD does not save the hand that touches a live part.

    Bad. 320 ms read on a 30 mA RCD without delay.

    Good. 28 ms read there.

    To put it right. Test it with its load off; if it still is slow, replace it.

    Source. BS 7671 643.8, BS EN 61008: 300 ms; type S from 130 to 500 ms.
    """
    for circuit, _, reading in read_circuits(job):
        found = reading.rcd_ms
        rcd = rcd_of(circuit, job.installation)
        if found is None or found.value is None:
            continue  # TR-07 says what was not read
        if rcd is None:
            yield job.not_checked(
                circuit.tag,
                f"its RCD is not recorded, {found.shown} ms was read",
                to_do="Read the RCD's rating and type, and write them into the job file.",
            )
            continue
        most = longest_trip_ms(delayed=rcd.delayed)
        if found.beyond:
            yield job.fails(
                circuit.tag,
                f"The RCD did not trip: {found.shown} ms was read.",
                to_do=TO_DO,
                found=found.shown,
            )
            continue
        yield job.at_most(
            circuit.tag,
            what="measured tripping time of the RCD",
            found=found.value,
            limit_is=f"the longest for it ({most.source})",
            limit=most.value,
            unit="ms",
            to_do=TO_DO,
        )
        if rcd.delayed:
            yield job.at_least(
                circuit.tag,
                what="measured tripping time of the RCD with delay",
                found=found.value,
                limit_is="the time it has to wait",
                limit=shortest_trip_ms().value,
                unit="ms",
                to_do="Look whether the RCD is the one on the drawing; replace it if need be.",
            )
