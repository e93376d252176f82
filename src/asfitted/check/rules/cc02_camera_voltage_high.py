"""CC-02: camera voltage not too high."""

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
    id="CC-02",
    title="Camera voltage not too high",
    clause=practice("12 V d.c. camera supplies, 12 V plus 10 %"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Camera voltage not too high.

    What it checks. The nearest camera does not get more than its greatest voltage.

    Why it matters on site. A supply turned up for the far camera burns out the near one.

    Bad. 14.2 V at a camera 4 m from the supply.

    Good. 12.9 V there.

    To put it right. Turn the supply down, or feed the far camera another way.

    Source. Camera window of 12 V ± 10 %.
    """
    for result in job.results.data.values():
        if is_fed_at_12_v(job.installation, result.tag):
            yield job.at_most(
                result.tag,
                what="voltage of its supply, which it sees with its lamps off",
                found=result.supply_v,
                limit_is="the most it stands",
                limit=result.window_v[1] if result.window_v else None,
                unit="V",
                to_do="Turn the supply down, or feed the far camera another way.",
            )
