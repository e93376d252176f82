"""CC-07: headroom of the 12 V supply."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.cctv import supply_headroom

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CC-07",
    title="Headroom of the 12 V supply",
    clause=practice("12 V d.c. camera supplies"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Headroom of the 12 V supply.

    What it checks. The 12 V supply gives at least 1.25 times the current of its cameras.

    Why it matters on site. A supply at its limit runs hot and is the first thing to fail.

    Bad. 4.6 A of cameras on a 5 A supply.

    Good. 1.9 A of cameras on it.

    To put it right. Fit a larger supply, or share the cameras between two.

    Source. Trade practice: 1.25 × the sum with all lamps on.
    """
    headroom = supply_headroom()
    for total in job.results.equipment:
        if total.what == "current":
            yield job.at_most(
                total.tag,
                what="current of its cameras with lamps on",
                found=total.used,
                limit_is=f"its rating over {headroom.value:g}",
                limit=total.available / headroom.value if total.available is not None else None,
                unit="A",
                to_do="Fit a larger supply, or share the cameras between two.",
                known_by=headroom.provenance,
            )
