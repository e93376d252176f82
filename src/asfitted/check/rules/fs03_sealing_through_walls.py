"""FS-03: holes through walls made good."""

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
    id="FS-03",
    title="Holes through walls made good",
    clause=bs7671("527.2"),
    severity=Severity.NOTE,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Holes through walls made good.

    What it checks. A cable that passes through a wall is noted for sealing of the hole.

    Why it matters on site. An open hole carries smoke and weather through the wall.

    Bad. A floodlight cable through the outside wall.

    Good. A cable that stays inside.

    To put it right. Seal the hole to the rating of the wall, sloped to the outside.

    Source. BS 7671 527.2.1 to 527.2.4.
    """
    for route in job.results.routes.values():
        if not route.legs:
            continue  # an existing cable of which only the length is known
        holes = [leg for leg in route.legs if leg.kind == "through-wall"]
        where = " and ".join(dict.fromkeys(leg.wall or "the wall" for leg in holes))
        yield job.holds(
            route.cable,
            not holes,
            f"It passes through {where}: the hole must be made good.",
            to_do="Seal the hole to the rating of the wall, sloped to the outside.",
            found=where,
        )
