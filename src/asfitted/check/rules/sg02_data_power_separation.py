"""SG-02: distance of data from power."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="SG-02",
    title="Distance of data from power",
    clause="BS EN 50174-2 and BS 7671 444.6 (2018 numbering, not compared with A4:2026)",
    severity=Severity.WARNING,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Distance of data from power.

    What it checks. A data run beside a power run keeps the distance worked out for it.

    Why it matters on site. Too close, and pictures roll and links drop whenever the big motor
    starts.

    Bad. 40 mm from a tray of nine circuits that asks for 100 mm.

    Good. 250 mm from it.

    To put it right. Move one run, or use metal trunking with a lid for the data cables.

    Source. BS EN 50174-2, A = S × P by segregation class and circuits beside it.
    """
    for result in job.results.containment.values():
        if result.separation_needed_mm is None:
            continue
        yield job.at_least(
            result.tag,
            what=f"distance from {result.separation_from}",
            found=result.separation_mm,
            limit_is="the separation needed",
            limit=result.separation_needed_mm,
            unit="mm",
            to_do="Move one of the runs, or put the data cables in closed metal trunking.",
        )
