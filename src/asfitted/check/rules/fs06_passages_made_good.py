"""FS-06: passages made good and shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection
    from asfitted.resolve.installation import Passage


@rule(
    id="FS-06",
    title="Passages made good and shown",
    clause=bs7671("527.2 and 526"),
    severity=Severity.NOTE,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Passages made good and shown.

    What it checks. A passage that cables of this job go through is noted, with how many there are.

    Why it matters on site. The seal is hidden once the ceiling is up: it is inspected while it can
    be seen, or not at all.

    Bad. A hole with five cables, no photograph and nobody who knows what it was filled with.

    Good. A passage without cables of this job.

    To put it right. Make the hole good after the last cable, photograph it, mark it beside the
    hole and hand the record over.

    Source. BS 7671 527.2.1 to 527.2.4; hidden seals are for the inspection while they can be seen.
    """
    for tag, passage in job.installation.passages.items():
        result = job.results.passages.get(tag)
        count = len(result.cables) if result else 0
        cables = "1 cable passes" if count == 1 else f"{count} cables pass"
        yield job.holds(
            tag,
            count == 0,
            f"{cables} through the {_what(passage)}.",
            to_do="Make it good after the last cable, photograph the seal and mark it.",
            found=str(count),
        )


def _what(passage: Passage) -> str:
    minutes = passage.fire_resistance_min
    if minutes is None:
        return f"{passage.through} (fire resistance not recorded)"
    return f"{minutes:g} min fire {passage.through}" if minutes else passage.through
