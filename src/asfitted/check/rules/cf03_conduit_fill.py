"""CF-03: fill of conduit and duct."""

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
    id="CF-03",
    title="Fill of conduit and duct",
    clause=bs7671("522.8 and On-Site Guide Appendix E"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Fill of conduit and duct.

    What it checks. The cables in a conduit or duct fill no more of it than its limit.

    Why it matters on site. A cable forced into a full pipe is damaged where nobody can see it.

    Bad. Four sheathed cables in one 20 mm conduit.

    Good. The same in 32 mm conduit.

    To put it right. Use a larger size, or a second pipe.

    Source. On-Site Guide Appendix E, space factor 45 %, tighter for data cables drawn in.
    """
    yield from judge_fill(job, ("conduit", "duct"), to_do="Use a larger size or a second pipe.")
