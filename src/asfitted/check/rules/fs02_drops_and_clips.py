"""FS-02: clipped cables and plastic drops."""

from __future__ import annotations

from collections import defaultdict
from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="FS-02",
    title="Clipped cables and plastic drops",
    clause=bs7671("521.10.202"),
    severity=Severity.NOTE,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Clipped cables and plastic drops.

    What it checks. Cables that are clipped, or drop in plastic, are noted for metal clips.

    Why it matters on site. Plastic clips let go first, and the cable hangs across the way out.

    Bad. A cable clipped direct along a wall.

    Good. The same cable in steel conduit or on tray.

    To put it right. Use metal clips, cleats, saddles or ties at each support.

    Source. BS 7671 521.10.202; accepted fixings are trade practice.
    """
    hung: dict[str, list[str]] = defaultdict(list)
    for route in job.results.routes.values():
        loose = {leg.enclosure for leg in route.legs if not leg.containment}
        weak = sorted(e for e in loose if e == "clipped" or "plastic" in e)
        for enclosure in weak:
            hung[enclosure].append(route.cable)
        if route.legs and not weak:
            yield job.passes(route.cable)
    for enclosure, cables in sorted(hung.items()):
        yield job.fails(
            "job",
            f"In part {enclosure}: {', '.join(cables)}. Their fixings must be metal.",
            to_do="Use metal clips, cleats, saddles or ties, as the materials list them.",
            found=enclosure,
        )
