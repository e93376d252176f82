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

    What it checks. No piece of containment holds both power and data cables without a partition.

    Why it matters on site. One pulled-in sheath, and the network cable carries mains.

    Bad. A run for power and data, with both in the same piece.

    Good. A run of its own for each.

    To put it right. Use two runs, or a partition and say so in a waiver.

    Source. BS 7671 528.1 and the options it lists.
    """
    for section in job.results.sections.values():
        if not section.cables:
            continue
        bands = {job.installation.cables[tag].band for tag in section.cables}
        yield job.holds(
            section.ident,
            len(bands) == 1,
            f"Power and data cables lie together: {', '.join(section.cables)}.",
            to_do="Use two runs; where a partition is fitted, say so in a waiver.",
            found=" and ".join(sorted(bands)),
        )
