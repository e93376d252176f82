"""EF-03: socket-outlets up to 32 A have a 30 mA RCD."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.kinds import is_socket
from asfitted.check.protection import rcds_before
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="EF-03",
    title="Socket-outlets up to 32 A have a 30 mA RCD",
    clause=bs7671("411.3.3 and 415.1.1"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Socket-outlets up to 32 A have a 30 mA RCD.

    What it checks. Each a.c. socket-outlet up to 32 A has an RCD of 30 mA or less before or in it.

    Why it matters on site. A damaged flex on a portable tool is what kills; this RCD is what then
    acts.

    Bad. A 32 A 5-pin socket-outlet on a plain C32 TP.

    Good. The same outlet with its own 30 mA RCD, or an RCBO in the board.

    To put it right. Fit an RCBO in the board or an outlet with its own RCD.

    Source. BS 7671 411.3.3 (as amended in 2022); 415.1.1 for 30 mA. An RCD in the outlet counts.
    """
    greatest_a = site_limit("socket-outlet needing additional protection").value
    limit = site_limit("additional protection residual current")
    for circuit, point in job.points():
        if not is_socket(point) or (point.rating_a or 0) > greatest_a:
            continue
        rcds = rcds_before(job.installation, circuit, point)
        least_ma = min((rcd.idn_ma for _, rcd in rcds), default=None)
        if least_ma is None:
            yield job.fails(
                point.tag,
                f"{point.words} on {circuit.tag} ({circuit.device.words}) has no RCD.",
                to_do="Fit an RCBO in the board or an outlet with its own 30 mA RCD.",
                found="none",
            )
        else:
            yield job.at_most(
                point.tag,
                what="residual current of its RCD",
                found=least_ma,
                limit_is="the most for additional protection",
                limit=limit.value,
                unit="mA",
                to_do="Fit a 30 mA RCD.",
            )
