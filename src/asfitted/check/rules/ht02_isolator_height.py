"""HT-02: height of isolators."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.heights import judge_point_height
from asfitted.check.kinds import is_isolator
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="HT-02",
    title="Height of isolators",
    clause=practice("BS 7671 462, 537 and 513.1"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Height of isolators.

    What it checks. Isolators of machines sit where a hand finds them.

    Why it matters on site. In a fright nobody fetches steps.

    Bad. An isolator 2.4 m up.

    Good. The same 1.5 m up.

    To put it right. Move it within the range, or waive it with the reason.

    Source. BS 7671 513.1 (accessible); the range is trade practice.
    """
    for _, point in job.points():
        if is_isolator(point):
            yield from judge_point_height(job, point)
