"""HT-05: height of outside floodlights."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.heights import judge_point_height
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="HT-05",
    title="Height of outside floodlights",
    clause=practice("trade practice for floodlights"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Height of outside floodlights.

    What it checks. Outside floodlights sit above easy reach and can still be serviced from steps.

    Why it matters on site. Too low and it dazzles and is broken; too high and the lamp is never
    changed.

    Bad. A floodlight 1.9 m up.

    Good. The same 3.2 m up.

    To put it right. Move it within the range, or waive it with the reason.

    Source. Trade range 2.5 to 5 m.
    """
    for _, point in job.points():
        if point.kind == "floodlight":
            yield from judge_point_height(job, point)
