"""OC-08: sub-board faults and the device before it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.protection import upstream_circuit
from asfitted.check.registry import rule
from asfitted.reference.devices import magnetic_lower_multiple
from asfitted.reference.release_settings import surely_holds_a

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection
    from asfitted.resolve.installation import Device


@rule(
    id="OC-08",
    title="Sub-board faults and the device before it",
    clause=bs7671("536.4.1"),
    severity=Severity.NOTE,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Sub-board faults and the device before it.

    What it checks. A fault at a sub-board stays below the instant release of the breaker feeding
    it.

    Why it matters on site. Otherwise a dead short at one machine may black out the whole sub-board.

    Bad. 1.9 kA at a sub-board behind a C40, whose instant release may act from 200 A.

    Good. A sub-board behind a fuse or a selective breaker, shown by the maker's table.

    To put it right. Accept it and say so on the drawing, or choose a feed that the maker tables as
    selective.

    Source. BS 7671 536.4.1; lower end of the instantaneous band, BS EN 60898-1 Table 2; 0.8 Im for
    a setting to BS EN 60947-2.
    """
    for board in job.installation.boards.values():
        feed = upstream_circuit(job.installation, board)
        if feed is None or not (feed.device.curve or feed.device.kind == "mccb"):
            continue
        result = job.results.boards.get(board.tag)
        worst_ka = (result.fault_max_3ph_ka or result.fault_max_1ph_ka) if result else None
        yield job.at_most(
            board.tag,
            what="greatest fault current at the board",
            found=worst_ka * 1000 if worst_ka is not None else None,
            limit_is=f"what the {feed.device.words} at {feed.tag} surely leaves to others",
            limit=_holds_a(feed.device),
            unit="A",
            to_do="Expect both to trip on a dead short, or use the maker's selectivity table.",
        )


def _holds_a(device: Device) -> float | None:
    """Return the current up to which a breaker does not trip at once, A; None if not recorded."""
    if device.im_a is not None:
        return surely_holds_a(device.im_a).value
    if not device.curve:
        return None
    return magnetic_lower_multiple(device.curve).value * device.rating_a
