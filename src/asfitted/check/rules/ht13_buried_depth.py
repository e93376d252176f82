"""HT-13: depth of buried runs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="HT-13",
    title="Depth of buried runs",
    clause=practice("BS 7671 522.8.10"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Depth of buried runs.

    What it checks. A buried run lies at least 0.45 m deep.

    Why it matters on site. Spades and fence posts find shallow cables.

    Bad. A duct 0.3 m deep across a yard.

    Good. A duct 0.6 m deep with warning tape over it.

    To put it right. Dig deeper, or guard it with tiles or steel and show it on the drawing.

    Source. BS 7671 522.8.10 gives no figure; 0.6 m and not under 0.45 m is trade practice.
    """
    limit = site_limit("least depth of a buried run")
    for run in job.installation.containment.values():
        if "buried" in run.kind:
            yield job.at_least(
                run.tag,
                what="depth of the run",
                found=run.depth_mm,
                limit_is="the least in open ground",
                limit=limit.value,
                unit="mm",
                to_do="Dig deeper, or guard it and show it on the drawing.",
            )
