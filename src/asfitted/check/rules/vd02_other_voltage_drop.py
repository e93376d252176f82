"""VD-02: voltage drop of other circuits."""

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
    id="VD-02",
    title="Voltage drop of other circuits",
    clause=bs7671("525 and Appendix 4, 6.4"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Voltage drop of other circuits.

    What it checks. The drop from the origin to the last point of a power circuit is within its
    limit.

    Why it matters on site. Motors start badly and heaters give less than was paid for.

    Bad. 5.6 % at the last socket-outlet.

    Good. 2.4 % there.

    To put it right. Use a larger cable, a shorter way, or move the circuit to a nearer board.

    Source. BS 7671 525.202 and Table 4Ab: 5 % for other uses of a public supply.
    """
    for circuit, result in job.surveyed_circuits():
        if circuit.use == "lighting" or circuit.feeds_board:
            continue
        yield job.at_most(
            circuit.tag,
            what=f"voltage drop to {result.worst_point if result else 'the last point'}",
            found=result.drop_pct if result else None,
            limit_is="the limit",
            limit=result.drop_limit_pct if result else None,
            unit="%",
            to_do="Use a larger cable or a shorter way.",
        )
