"""CF-07: cables fit on tray and basket in one layer."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.fill import judge_fill
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CF-07",
    title="Cables fit on tray and basket in one layer",
    clause=bs7671("522.8 and 523.5"),
    severity=Severity.ERROR,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Cables fit on tray and basket in one layer.

    What it checks. The cables of a tray or basket fit side by side on its whole width.

    Why it matters on site. A second layer makes every rating worked out for one layer untrue.

    Bad. 62 mm of cables and edges on a 50 mm tray.

    Good. The same on a 100 mm tray.

    To put it right. Order a wider tray, or take some cables another way.

    Source. BS 7671 523.5 (group as rated: one layer touching).
    """
    yield from judge_fill(
        job,
        ("tray", "basket", "ladder"),
        to_do="Order a wider one or take another way.",
        limit_pct=site_limit("whole width of tray").value,
    )
