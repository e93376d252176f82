"""HT-01: height of socket-outlets."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.heights import judge_point_height
from asfitted.check.kinds import is_socket
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="HT-01",
    title="Height of socket-outlets",
    clause=practice("BS 7671 553.1.6 and 522.6"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Height of socket-outlets.

    What it checks. Socket-outlets sit within the planning heights of a workplace.

    Why it matters on site. Too low and trolleys break them; too high and flexes hang across the
    bench.

    Bad. A 13 A socket 450 mm up in a workshop.

    Good. The same 1200 mm up.

    To put it right. Move it within the range, or waive it with the reason.

    Source. BS 7671 553.1.6 gives no figure; the range is trade practice for workplaces.
    """
    for _, point in job.points():
        if is_socket(point) and not point.position.end_of:
            yield from judge_point_height(job, point)
