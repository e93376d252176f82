"""CF-01: room left on tray and basket."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.fill import judge_fill
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CF-01",
    title="Room left on tray and basket",
    clause=practice("BS 7671 522.8 and BS EN 61537"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Room left on tray and basket.

    What it checks. The cables on a tray or basket leave a quarter of its width for later.

    Why it matters on site. The next cable goes on top, and the grouping factor of those below is no
    longer true.

    Bad. Cables that take 94 % of a 150 mm tray.

    Good. The same cables on a 225 mm tray, 63 %.

    To put it right. Order the next stock width, or take some cables another way.

    Source. Trade practice: one layer, edges clear, a quarter of the width left for later.
    """
    yield from judge_fill(
        job, ("tray", "basket", "ladder"), to_do="Order a wider one or take another way."
    )
