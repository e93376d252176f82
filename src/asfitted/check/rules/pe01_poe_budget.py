"""PE-01: poE budget of the switch."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="PE-01",
    title="PoE budget of the switch",
    clause="IEEE 802.3 clauses 33 and 145",
    severity=Severity.ERROR,
    provenance="derived",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """PoE budget of the switch.

    What it checks. The power set aside for all PoE devices is within the budget of the switch.

    Why it matters on site. At dusk every camera lights its lamps at once, and the last ports are
    shut off.

    Bad. 72 W wanted from a switch of 65 W.

    Good. 46 W wanted from it.

    To put it right. Fit a switch of a larger budget, or feed some devices locally.

    Source. IEEE 802.3 power per class, summed over the ports.
    """
    for total in job.results.equipment:
        if total.what == "PoE budget":
            yield job.at_most(
                total.tag,
                what="power wanted over its ports",
                found=total.used,
                limit_is="its PoE budget",
                limit=total.available,
                unit="W",
                to_do="Fit a switch of a larger budget, or feed some devices locally.",
            )
