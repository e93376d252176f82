"""OC-12: fuse after a fuse."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.protection import devices_before
from asfitted.check.registry import rule
from asfitted.reference.fuse_energy import FUSE_RATIO, GATED

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="OC-12",
    title="Fuse after a fuse",
    clause=bs7671("536.4.1"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Fuse after a fuse.

    What it checks. A gG fuse that feeds others is rated at least 1.6 times the fuse after it.

    Why it matters on site. Below that ratio the larger fuse may melt first on a fault in one
    circuit.

    Bad. A 50 A fuse after a 63 A fuse.

    Good. A 32 A fuse after a 63 A fuse.

    To put it right. Fit a smaller fuse after it, or show the maker's table.

    Source. BS 7671 536.4.1; ratio 1.6 : 1 of gG fuses, BS EN 60269-1.
    """
    for circuit, _ in job.circuits():
        if circuit.device.standard not in GATED:
            continue
        before = devices_before(job.installation, circuit.board)
        if not before or before[0][1].standard not in GATED:
            continue
        where, fuse = before[0]
        yield job.at_least(
            circuit.tag,
            what=f"rating of {where}",
            found=fuse.rating_a,
            limit_is=f"{FUSE_RATIO:g} times its {circuit.device.words}",
            limit=round(FUSE_RATIO * circuit.device.rating_a, 6),
            unit="A",
            to_do="Fit a smaller fuse after it, or show the maker's table.",
        )
