"""OC-11: breakers after a fuse."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.protection import devices_before
from asfitted.check.registry import rule
from asfitted.errors import OutsideTableError
from asfitted.reference.devices import let_through_energy
from asfitted.reference.fuse_energy import GATED, prearcing_energy

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection
    from asfitted.resolve.installation import Circuit, Device


@rule(
    id="OC-11",
    title="Breakers after a fuse",
    clause=bs7671("536.4.1"),
    severity=Severity.NOTE,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Breakers after a fuse.

    What it checks. The most energy that a breaker of a board lets through does not melt the fuse
    before the board.

    Why it matters on site. A dead short on one circuit may take the supply fuse with it, and the
    whole place waits in the dark for somebody who may break the seal.

    Bad. A C32 that may let through 39 000 A²s after a 100 A fuse that may melt at 27 000 A²s.

    Good. A B16 that lets through 15 000 A²s after that fuse.

    To put it right. Show the maker's selectivity table, or accept that both may operate.

    Source. BS 7671 536.4.1; class 3 limits of BS EN 60898-1 Annex ZA against the pre-arcing
    energy of the gates of BS EN 60269-1.
    """
    for board in job.installation.boards.values():
        before = devices_before(job.installation, board.tag)
        if not before or before[0][1].standard not in GATED:
            continue
        where, fuse = before[0]
        breakers = [c for c in job.circuits_of(board) if c.device.curve in ("B", "C")]
        if not breakers:
            continue
        energies = [(_energy(job, circuit), circuit) for circuit in breakers]
        unknown = [circuit for energy, circuit in energies if energy is None]
        if unknown:
            named = ", ".join(f"{one.device.words} at {one.tag}" for one in unknown)
            yield job.not_checked(
                board.tag,
                f"the energy that these may let through is not held: {named}",
                to_do="Use the maker's selectivity table.",
            )
        known = [(energy, circuit) for energy, circuit in energies if energy is not None]
        if not known:
            continue
        most, worst = max(known, key=lambda pair: pair[0])
        yield job.at_most(
            board.tag,
            what=f"energy that the {worst.device.words} at {worst.tag} may let through",
            found=most,
            limit_is=f"the least energy that melts {where}, {fuse.words}",
            limit=_melts(fuse),
            unit="A²s",
            to_do="Expect the fuse to go on a dead short, or use the maker's selectivity table.",
        )


def _energy(job: Inspection, circuit: Circuit) -> float | None:
    """Return the class limit at the greatest fault current, A2s; None where there is none."""
    result = job.results.circuits.get(circuit.tag)
    if result is None or result.fault_max_ka is None:
        return None
    device = circuit.device
    try:
        found = let_through_energy(device.curve, device.rating_a, 1000 * result.fault_max_ka)
    except OutsideTableError:
        return None
    return found.value if found else None


def _melts(fuse: Device) -> float | None:
    try:
        return prearcing_energy(fuse.standard, fuse.rating_a).value
    except OutsideTableError:
        return None
