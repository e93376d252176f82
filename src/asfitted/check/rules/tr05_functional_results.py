"""TR-05: polarity, phase sequence and test buttons."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.readings import read_circuits
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="TR-05",
    title="Polarity, phase sequence and test buttons",
    clause=bs7671("643.6, 643.9 and 643.10"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Polarity, phase sequence and test buttons.

    What it checks. No polarity or phase sequence is recorded as wrong, no test button as failing.

    Why it matters on site. A switch in the neutral leaves the load live when it is off.

    Bad. Polarity recorded as wrong.

    Good. Polarity recorded as correct.

    To put it right. Put the connections right, or replace the device; then test again.

    Source. BS 7671 643.6 polarity, 643.9 phase sequence, 643.10 functional testing.
    """
    for circuit, _, reading in read_circuits(job):
        yield from _judged(
            job,
            circuit.tag,
            (
                ("Polarity", reading.polarity),
                ("Test button of the RCD", reading.rcd_button),
                ("Test button of the AFDD", reading.afdd_button),
            ),
        )
    readings = job.installation.readings
    for tag, board in readings.boards.items() if readings else ():
        pairs = (("Polarity", board.polarity), ("Phase sequence", board.phase_sequence))
        yield from _judged(job, tag, pairs)
    if readings and readings.supply:
        yield from _judged(job, "supply", (("Polarity", readings.supply.polarity),))


def _judged(
    job: Inspection, subject: str, results: tuple[tuple[str, str | None], ...]
) -> Iterator[Verdict]:
    for what, result in results:
        if result is not None:
            yield job.holds(
                subject,
                result not in {"wrong", "fails"},
                f"{what} is recorded as: {result}.",
                to_do="Put the connections right or replace the device; test again.",
                found=result,
            )
