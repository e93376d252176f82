"""HT-11: live parts out of finger reach."""

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
    id="HT-11",
    title="Live parts out of finger reach",
    clause=bs7671("416.2.1"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Live parts out of finger reach.

    What it checks. Every point with an IP code keeps fingers out: first numeral 2 or more.

    Why it matters on site. This is what keeps a hand off live parts.

    Bad. An IP10 box.

    Good. An IP20 accessory.

    To put it right. Fit an enclosure of IP2X or better.

    Source. BS 7671 416.2.1, IP2X or IPXXB.
    """
    limit = site_limit("any enclosure first numeral")
    silent = [p.tag for _, p in job.points() if not is_recorded(p.ip)]
    if silent:
        yield job.not_checked(
            "job",
            f"the IP code is not recorded for {', '.join(silent)}",
            to_do="Give the IP codes; a plain accessory to BS 1363 or BS EN 60669 is IP2X.",
        )
    for _, point in job.points():
        first = numeral(point.ip, "first")
        if first is not None:
            yield job.at_least(
                point.tag,
                what=f"first numeral of {point.ip}",
                found=float(first),
                limit_is="the least for any enclosure",
                limit=limit.value,
                unit="",
                to_do="Fit an enclosure of IP2X or better.",
            )
