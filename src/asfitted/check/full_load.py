"""The full-load current of a motor, read from the figures of the cables at it."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.check.inspection import Inspection
    from asfitted.resolve.installation import PointServed


def full_load_of(job: Inspection, point: PointServed) -> float | None:
    """Return what a motor takes at full load, A: its cable's current less what goes on from it.

    None: neither power nor current of the motor is given (the design current is then the rating
    of the breaker and tells nothing of the motor), or its cable was not worked out.
    """
    if point.load_w is None and point.load_a is None:
        return None
    own = [c for c in job.installation.cables.values() if c.circuit == point.circuit]
    arriving = [job.results.cables.get(c.tag) for c in own if c.to_end == point.tag]
    leaving = [job.results.cables.get(c.tag) for c in own if c.from_end == point.tag]
    if not arriving or any(result is None for result in (*arriving, *leaving)):
        return None
    currents = [[r.design_current_a for r in side if r] for side in (arriving, leaving)]
    return sum(currents[0]) - sum(currents[1])
