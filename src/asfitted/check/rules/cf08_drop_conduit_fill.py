"""CF-08: fill of conduit outside the runs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CF-08",
    title="Fill of conduit drops",
    clause=bs7671("522.8 and On-Site Guide Appendix E"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Fill of conduit drops.

    What it checks. Cables that share the conduit of a drop, or of a level piece between two
    accessories, fill no more than 45 % of its inside (40 % for data cables).

    Why it matters on site. A loop-in socket-outlet has two cables in its drop: two flat 4 mm²
    cables do not go into 20 mm conduit, and forcing them skins both.

    Bad. Two 4/1.5 mm² twin and earth cables in one 20 mm steel conduit: 68 %.

    Good. The same two in 25 mm conduit: 41 %.

    To put it right. Say a larger conduit in `drops`, or use singles, or run a second conduit.

    Source. On-Site Guide Appendix E, space factor 45 %; cable sizes of BS 6004.
    """
    for fill in job.results.drop_fills:
        yield job.at_most(
            fill.cables[0],
            what=f"fill of the conduit with {', '.join(fill.cables)} ({fill.words})",
            found=fill.fill_pct,
            limit_is="the limit",
            limit=fill.limit_pct,
            unit="%",
            to_do="Say a larger conduit in `drops`, use singles, or run a second conduit.",
        )
