"""SG-03: power and data in one piece of containment."""

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
    id="SG-03",
    title="Power and data in one piece of containment",
    clause=bs7671("528.1"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Power and data in one piece of containment.

    What it checks. No piece of a run holds both power and data cables without a partition.

    Why it matters on site. One pulled-in sheath, and the network cable carries mains.

    Bad. A run for power and data, with both in the same piece.

    Good. A run of its own for each.

    To put it right. Use two runs, or a partition and say so in a waiver.

    Source. BS 7671 528.1 and the options it lists.
    """
    cables = job.installation.cables
    for run in job.installation.containment:
        own = [s for s in job.pieces_of(run) if s.cables]
        if not own:
            continue
        both = [s for s in own if len({cables[tag].band for tag in s.cables}) > 1]
        worst = max(both, key=lambda section: len(section.cables), default=own[0])
        more = f", and at {', '.join(s.ident for s in both if s is not worst)}" if both[1:] else ""
        yield job.holds(
            run,
            not both,
            f"Power and data cables lie together at {worst.ident}: "
            f"{', '.join(worst.cables)}{more}.",
            to_do="Use two runs; where a partition is fitted, say so in a waiver.",
            found="power and data",
        )
