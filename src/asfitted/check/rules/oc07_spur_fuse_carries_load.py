"""OC-07: fuse of a fused spur carries its load."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="OC-07",
    title="Fuse of a fused spur carries its load",
    clause=practice("BS 1362 fuse in a fused connection unit to BS 1363-4"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Fuse of a fused spur carries its load.

    What it checks. The fuse of a fused spur is not smaller than the current behind it.

    Why it matters on site. The fuse blows in use and somebody puts a larger one in, or foil.

    Bad. A 3 A fuse before a 2 kW heater.

    Good. A 13 A fuse before it.

    To put it right. Fit the next size of fuse and check the flex behind it.

    Source. BS 1362 ratings 3, 5 and 13 A; the design current as worked out.
    """
    # what follows a fused spur on the circuit is taken to hang on its fuse
    incoming = {cable.to_end: result for _, cable, result in job.power_cables()}
    for _, point in job.points():
        if point.fuse_a is None or point.tag not in incoming:
            continue
        result = incoming[point.tag]
        yield job.at_most(
            point.tag,
            what="current behind the fuse",
            found=result.design_current_a if result else None,
            limit_is="its rating",
            limit=point.fuse_a,
            unit="A",
            to_do="Fit the next size of fuse and check the flex behind it.",
        )
