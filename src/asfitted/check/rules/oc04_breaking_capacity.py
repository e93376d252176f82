"""OC-04: breaking capacity at the board."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.protection import has_its_back_up
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="OC-04",
    title="Breaking capacity at the board",
    clause=bs7671("434.5.1 and 536.1"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Breaking capacity at the board.

    What it checks. The device can break the greatest fault current at its board.

    Why it matters on site. A breaker that meets more than it can break may burst and burn the
    board.

    Bad. A 3 kA breaker where 4.2 kA was measured.

    Good. A 6 kA breaker there.

    To put it right. Fit devices of a higher breaking capacity, or get the maker's back-up figures
    in writing.

    Source. BS 7671 434.5.1 and 536.1; rated short-circuit capacity Icn of BS EN 60898.
    """
    for circuit, result in job.circuits():
        capacity_ka = circuit.device.icn_ka
        board = job.installation.boards[circuit.board]
        rated_ka = board.short_circuit_rating_ka
        if rated_ka is not None and has_its_back_up(job.installation, board):
            capacity_ka = max(capacity_ka or 0.0, rated_ka)
        yield job.at_least(
            circuit.tag,
            what=f"breaking capacity of its {circuit.device.words}",
            found=capacity_ka,
            limit_is=f"the greatest fault current at {circuit.board}",
            limit=result.fault_max_ka if result else None,
            unit="kA",
            to_do="Fit a higher breaking capacity, or hold the maker's back-up figures in writing.",
        )
