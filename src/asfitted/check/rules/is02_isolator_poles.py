"""IS-02: isolator breaks all live conductors."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.kinds import is_isolator
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="IS-02",
    title="Isolator breaks all live conductors",
    clause=bs7671("462.2 and 537.2"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Isolator breaks all live conductors.

    What it checks. An isolator has a pole for each line, and for the neutral where the system asks
    for it.

    Why it matters on site. A dead-looking machine with one live line left in it.

    Bad. A 2-pole isolator on a three-phase motor.

    Good. A 3-pole or 4-pole one.

    To put it right. Fit an isolator with enough poles.

    Source. BS 7671 462.2: all live conductors; the neutral may stay in TN-S and TN-C-S.
    """
    supply = job.installation.supply
    neutral = 1 if supply is not None and supply.system == "TT" else 0
    for circuit, point in job.points():
        if is_isolator(point):
            lines = 3 if circuit.phase == "TP" else 1
            yield job.at_least(
                point.tag,
                what="poles of the isolator",
                found=point.poles,
                limit_is="the live conductors to be broken",
                limit=lines + neutral,
                unit="",
                to_do="Fit an isolator with enough poles.",
            )
