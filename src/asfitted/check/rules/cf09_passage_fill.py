"""CF-09: cables fit through a passage."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CF-09",
    title="Cables fit through a passage",
    clause=bs7671("522.8 and 527.2"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Cables fit through a passage.

    What it checks. The cables take no more of a passage's opening than leaves room for its seal.

    Why it matters on site. A hole packed with cables cannot be sealed between them.

    Bad. Cables over seven tenths of a 100 by 50 hole.

    Good. The same cables through 200 by 50.

    To put it right. Make the hole larger, or a second one beside it.

    Source. Trade practice; the tested system of fire-stopping states its own greatest fill.
    """
    limit = site_limit("fill of a passage")
    for tag, result in job.results.passages.items():
        if not result.cables:
            continue
        yield job.at_most(
            tag,
            what="fill of the opening",
            found=result.fill_pct,
            limit_is="the room that leaves enough for a seal",
            limit=limit.value,
            unit="%",
            to_do="Make the hole larger or add another; give its size where it is not recorded.",
        )
