"""FS-01: plastic containment needs fire-resistant fixing."""

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
    id="FS-01",
    title="Plastic containment needs fire-resistant fixing",
    clause=bs7671("521.10.202"),
    severity=Severity.NOTE,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Plastic containment needs fire-resistant fixing.

    What it checks. A run in plastic is noted for metal fixings that hold its cables in a fire.

    Why it matters on site. Plastic lets go first, and cables across a doorway have killed
    firefighters.

    Bad. Cat6 in plastic trunking with nothing else to hold it.

    Good. Steel basket.

    To put it right. Fit metal clips or bands inside at each support, or use steel.

    Source. BS 7671 521.10.202, all parts of the installation since 2018.
    """
    for run in job.installation.containment.values():
        yield job.holds(
            run.tag,
            "plastic" not in run.kind,
            f"{run.words}: plastic may not be all that holds the cables up in a fire.",
            to_do="Fit metal bands or clips inside at each support, and record their spacing.",
            found=run.kind,
        )
