"""CC-01: camera voltage high enough."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.kinds import is_fed_at_12_v
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CC-01",
    title="Camera voltage high enough",
    clause=practice("12 V d.c. camera supplies, 12 V less 10 %"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Camera voltage high enough.

    What it checks. A 12 V camera with its lamps on still gets its least voltage.

    Why it matters on site. It works all day and goes dark at dusk, when the lamps come on.

    Bad. 9.9 V at a gate camera 62 m away.

    Good. 11.6 V there.

    To put it right. Use more cores each way, thicker cable, a supply set higher, or PoE.

    Source. Camera window of 12 V ± 10 %; Ohm's law over the loop.
    """
    for result in job.results.data.values():
        if is_fed_at_12_v(job.installation, result.tag):
            yield job.at_least(
                result.tag,
                what="voltage at the camera with its lamps on",
                found=result.at_device_v,
                limit_is="the least it works at",
                limit=result.window_v[0] if result.window_v else None,
                unit="V",
                to_do="Use more cores each way, thicker cable, a supply set higher, or PoE.",
            )
