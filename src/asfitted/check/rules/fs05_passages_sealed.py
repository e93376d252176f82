"""FS-05: passages through fire walls and floors sealed."""

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
    id="FS-05",
    title="Passages through fire walls and floors sealed",
    clause=bs7671("527.2"),
    severity=Severity.WARNING,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Passages through fire walls and floors sealed.

    What it checks. A passage through a wall or floor of recorded fire resistance is sealed in this
    job, and what is not recorded of either is said.

    Why it matters on site. An open riser carries smoke from storey to storey in minutes.

    Bad. A ladder through a 60 minute floor with "fire-stopping: no".

    Good. The same with "fire-stopping: yes", or a partition of which no resistance is asked.

    To put it right. Seal round and inside the containment with a system tested for the resistance
    of the wall or floor, and record it; ask the building owner for resistances not known. A seal of
    mineral wool counts as thermal insulation (523.9): write its thickness as "insulation".

    Source. BS 7671 527.2.1 to 527.2.4.
    """
    for passage in job.installation.passages.values():
        minutes = passage.fire_resistance_min
        if minutes == 0:
            yield job.passes(passage.tag)
        elif minutes is None:
            yield job.not_checked(
                passage.tag,
                f"the fire resistance of the {passage.through} is not recorded",
                to_do="Ask the building owner for the fire plan; until then seal it as a fire "
                f"{passage.through}.",
            )
        elif passage.fire_stopping == "not recorded":
            yield job.not_checked(
                passage.tag,
                f"sealing of the {minutes:g} min {passage.through} is not recorded",
                to_do='Say "fire-stopping: yes" once it is in the job, with the system used.',
            )
        else:
            yield job.holds(
                passage.tag,
                passage.fire_stopping == "yes",
                f"It passes through a {minutes:g} min fire {passage.through} and is not sealed.",
                to_do=f"Seal it with a system tested for {minutes:g} min, inside the containment "
                "too.",
                found=passage.fire_stopping,
            )
