"""CF-02: fill of trunking."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.fill import judge_fill
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CF-02",
    title="Fill of trunking",
    clause=bs7671("522.8 and On-Site Guide Appendix E"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Fill of trunking.

    What it checks. The cables in a piece of trunking fill no more than 45 % of its inside.

    Why it matters on site. Overfull trunking cannot be closed, and pulling one more cable skins the
    others.

    Bad. 30 cables that fill 61 % of a 50 × 50 trunking.

    Good. The same cables in 75 × 75.

    To put it right. Order the next size, or run a second trunking.

    Source. On-Site Guide Appendix E, space factor 45 %.
    """
    yield from judge_fill(job, ("trunking",), to_do="Order the next size or run a second one.")
