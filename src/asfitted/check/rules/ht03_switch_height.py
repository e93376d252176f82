"""HT-03: height of light switches."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.heights import judge_point_height
from asfitted.check.kinds import is_switch
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="HT-03",
    title="Height of light switches",
    clause=practice("Approved Document M and trade practice"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Height of light switches.

    What it checks. Light switches sit within the planning heights of a workplace.

    Why it matters on site. A switch is sought in the dark.

    Bad. A light switch 1.6 m up.

    Good. The same 1.2 m up.

    To put it right. Move it within the range, or waive it with the reason.

    Source. Trade range for workplaces; public parts of new buildings follow Approved Document M.
    """
    for _, point in job.points():
        if is_switch(point):
            yield from judge_point_height(job, point)
