"""HT-10: protection of points outside."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.ip_code import numeral
from asfitted.check.recorded import is_recorded
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="HT-10",
    title="Protection of points outside",
    clause=bs7671("512.2 and BS EN 60529"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Protection of points outside.

    What it checks. A point on the outer face of a wall is proof against splashing: IPX4 or better.

    Why it matters on site. Rain gets in, the RCD trips every wet morning, and the lid rusts on.

    Bad. An IP20 floodlight outside.

    Good. An IP65 one.

    To put it right. Fit one made for outside; IP65 where it stands in the open.

    Source. BS 7671 512.2 (external influences), second numeral of BS EN 60529.
    """
    limit = site_limit("outdoor second numeral")
    for _, point in job.points():
        if not point.position.outside:
            continue
        if not is_recorded(point.ip):
            yield job.not_checked(
                point.tag, "its IP code is not given", to_do="Give the IP code of the point."
            )
            continue
        yield job.at_least(
            point.tag,
            what=f"second numeral of {point.ip}",
            found=float(numeral(point.ip, "second") or 0),
            limit_is="the least outside",
            limit=limit.value,
            unit="",
            to_do="Fit one made for outside; IP65 where it stands in the open.",
            known_by=limit.provenance,
        )
