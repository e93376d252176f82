"""Measured results in front of a rule: which circuits have readings, and which they owe."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.calculate.results import CircuitResult
    from asfitted.check.inspection import Inspection
    from asfitted.resolve.installation import Circuit, Installation, Rcd
    from asfitted.resolve.readings import CircuitReading


def read_circuits(
    job: Inspection,
) -> Iterator[tuple[Circuit, CircuitResult | None, CircuitReading]]:
    """Yield every circuit that has readings, with its figures."""
    readings = job.installation.readings
    if readings is None:
        return
    for circuit, result in job.circuits():
        if circuit.tag in readings.circuits:
            yield circuit, result, readings.circuits[circuit.tag]


def rcd_of(circuit: Circuit, installation: Installation) -> Rcd | None:
    """Return the RCD that a circuit is tested by: in its device, else in a point of it."""
    if circuit.device.rcd is not None:
        return circuit.device.rcd
    found = (installation.points[tag].rcd for tag in circuit.points)
    return next((rcd for rcd in found if rcd is not None), None)


def may_have_rcd(circuit: Circuit, installation: Installation) -> bool:
    """Tell whether an RCD is to be looked for: one is named, or an older circuit names none.

    Of an older circuit only what was found is in the spec: an RCD that nobody recorded is unknown.
    """
    return rcd_of(circuit, installation) is not None or circuit.state != "new"


def owed_readings(
    circuit: Circuit, reading: CircuitReading, installation: Installation
) -> tuple[tuple[str, str], ...]:
    """Return what was not read of a circuit: (what, reason given or "")."""
    wanted = [
        ("continuity of the protective conductor", reading.r1r2_ohm or reading.r2_ohm),
        ("insulation to earth", reading.insulation_earth_mohm),
        ("loop impedance Zs", reading.zs_ohm),
    ]
    if circuit.ring:
        ends = (reading.r1_ohm, reading.rn_ohm, reading.ring_r2_ohm)
        wanted += [
            (f"ring end to end, {name}", r)
            for name, r in zip(("r1", "rn", "r2"), ends, strict=True)
        ]
    if rcd_of(circuit, installation) is not None:
        wanted.append(("tripping time of the RCD", reading.rcd_ms))
    elif may_have_rcd(circuit, installation):
        wanted.append(("tripping time of an RCD, or that it has none,", reading.rcd_ms))
    owed = [
        (what, found.not_tested if found else "")
        for what, found in wanted
        if found is None or found.value is None
    ]
    if reading.polarity is None:
        owed.append(("polarity", ""))
    return tuple(owed)
