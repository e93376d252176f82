"""EF-07: RCDs in series are selective."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.protection import rcds_before
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="EF-07",
    title="RCDs in series are selective",
    clause=bs7671("536.4.1.4"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """RCDs in series are selective.

    What it checks. Where two RCDs stand in a row, the first is delayed and has three times the mA.

    Why it matters on site. One damp tool puts the whole board out, freezers and lights with it.

    Bad. A 30 mA RCBO feeding an outlet that has its own 30 mA RCD.

    Good. A delayed 100 mA RCD before 30 mA RCBOs.

    To put it right. Take one RCD out, or make the first a delayed one of a higher residual current.

    Source. BS 7671 536.4.1.4 and BS EN 61008 type S; factor three is the makers' rule.
    """
    seen: set[tuple[str, str]] = set()
    for circuit, point in job.points():
        rcds = rcds_before(job.installation, circuit, point)
        for (near_words, near), (far_words, far) in itertools.pairwise(rcds):
            if (near_words, far_words) in seen:
                continue
            seen.add((near_words, far_words))
            yield job.holds(
                point.tag if point.rcd else circuit.tag,
                far.delayed and far.idn_ma >= 3 * near.idn_ma,
                f"{near_words} ({near.idn_ma:g} mA) and {far_words} ({far.idn_ma:g} mA"
                f"{', delayed' if far.delayed else ''}) may trip together.",
                to_do="Take one out, or make the first a delayed one of three times the mA.",
            )
