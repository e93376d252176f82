"""What the protective device of a circuit gives under fault: time, greatest Zs, energy let through.

An RCD inside a socket-outlet gives the cable before it nothing: the device at the board must
clear that cable alone.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

from asfitted.calculate.adiabatic import fault_energy_a2s
from asfitted.calculate.earth_fault_loop import measured_limit_ohm
from asfitted.calculate.working import Step
from asfitted.errors import OutsideTableError
from asfitted.reference import devices, fuse_energy
from asfitted.reference.figure import Figure
from asfitted.reference.release_settings import surely_trips_a

if TYPE_CHECKING:
    from asfitted.resolve.installation import Circuit, Device, Installation

INSTANTANEOUS_S = 0.1
RCD_STANDARD = "BS EN 61008"


@dataclass(frozen=True)
class LoopLimit:
    """The greatest Zs of a circuit, the time behind it, and where it comes from."""

    zs_ohm: float | None
    measured_ohm: float | None
    time_s: float | None
    source: str
    by_rcd: bool = False
    note: str = ""
    steps: tuple[Step, ...] = ()


@dataclass(frozen=True)
class Energy:
    """Energy a fault lets through before the device clears it, and how it was got."""

    energy_a2s: float
    words: str
    source: str


def loop_limit(circuit: Circuit, installation: Installation) -> LoopLimit:
    """Return the greatest Zs for the device at the board in the time the circuit must clear.

    TN: the overcurrent part of the device, also where an RCBO protects as well. TT with an RCD at
    the device or anywhere before its board: 50 V over the residual current of the nearest.
    """
    supply = installation.supply
    if supply is None:
        return LoopLimit(None, None, None, "no supply is given")
    sockets = circuit.use == "sockets" or any(
        "socket" in installation.points[tag].kind for tag in circuit.points
    )
    try:
        time = devices.disconnection_time(
            supply.system,
            final=not circuit.feeds_board,
            rating_a=circuit.device.rating_a,
            has_sockets=sockets,
            u0_v=supply.u0_v,
        )
        residual = _residual_ma(circuit, installation)
        if supply.system == "TT" and residual is not None:
            return _by_rcd(residual, time)
        return _by_overcurrent(circuit.device, time, supply.u0_v)
    except OutsideTableError as outside:
        return LoopLimit(None, None, None, str(outside))


def _residual_ma(circuit: Circuit, installation: Installation) -> float | None:
    """Return the residual current of the nearest RCD before a circuit, mA; None without one."""
    feeder: Circuit | None = circuit
    passed: set[str] = set()
    while feeder is not None and feeder.tag not in passed:
        passed.add(feeder.tag)
        if feeder.device.rcd is not None:
            return feeder.device.rcd.idn_ma
        board = installation.boards.get(feeder.board)
        if board is not None and board.main_switch and board.main_switch.rcd:
            return board.main_switch.rcd.idn_ma
        feeder = installation.circuits.get(board.fed_by) if board else None
    return None


def _by_rcd(residual_ma: float, time: Figure) -> LoopLimit:
    limit = devices.maximum_zs_rcd(residual_ma)
    step = Step(
        symbol="Zs max",
        words="greatest Zs, RCD for fault protection",
        formula="50 V / IΔn",
        substituted=f"50 V / {residual_ma / 1000:g} A",
        value=limit.value,
        unit="Ω",
        source=f"{limit.source} ({limit.provenance})",
    )
    source = f"RCD {residual_ma:g} mA, {limit.source} ({limit.provenance})"
    measured = limit.value  # the reading is set by the electrode: no allowance for heating
    steps = (_time(time), step)
    return LoopLimit(limit.value, measured, time.value, source, by_rcd=True, steps=steps)


def _by_overcurrent(device: Device, time: Figure, u0_v: float) -> LoopLimit:
    limit, current = _limit_and_current(
        device.standard, device.curve, device.rating_a, time.value, u0_v, im_a=device.im_a
    )
    step = Step(
        symbol="Zs max",
        words=f"greatest Zs for {device.words} in {time.value:g} s",
        formula="Cmin × U0 / Ia",
        substituted=f"{devices.C_MIN} × {u0_v:g} V / {current.value:g} A",
        value=limit.value,
        unit="Ω",
        source=f"{limit.source} ({limit.provenance})",
    )
    note = ""
    if device.rcd is not None:
        note = f"the {device.rcd.idn_ma:g} mA RCD of the RCBO gives fault protection as well"
    cold = devices.measured_zs_factor()
    reading_ohm = measured_limit_ohm(limit.value, factor=cold.value)
    return LoopLimit(
        limit.value,
        reading_ohm,
        time.value,
        f"{limit.source} ({limit.provenance})",
        note=note,
        steps=(_time(time), step, _reading(limit, cold, reading_ohm)),
    )


def _time(time: Figure) -> Step:
    return Step(
        symbol="t",
        words="longest time to disconnect an earth fault",
        formula="",
        substituted="",
        value=time.value,
        unit="s",
        source=f"{time.source} ({time.provenance})",
    )


def _reading(limit: Figure, cold: Figure, reading_ohm: float) -> Step:
    return Step(
        symbol="Zs read",
        words="greatest reading on site, conductors cold",
        formula="factor × Zs max",
        substituted=f"{cold.value:g} × {limit.value:.4f} Ω",
        value=reading_ohm,
        unit="Ω",
        source=f"{cold.source} ({cold.provenance})",
    )


@cache
def _limit_and_current(
    standard: str, curve: str, rating_a: float, time_s: float, u0_v: float, *, im_a: float | None
) -> tuple[Figure, Figure]:
    """Return the greatest Zs and the current behind it; Im where the breaker has a setting."""
    if im_a is not None:
        trips = surely_trips_a(im_a)
        value = devices.C_MIN * u0_v / trips.value
        source = f"Cmin U0 / (1.2 Im), Cmin {devices.C_MIN}; {trips.source}"
        return Figure(value, "ohm", source, trips.provenance), trips
    if standard == "BS EN 60947-2" and not curve:
        raise OutsideTableError('its setting is not given: write "Im 1250 A" in the device')
    return (
        devices.maximum_zs(standard, curve, rating_a, time_s, u0_v),
        devices.current_for_disconnection(standard, curve, rating_a, time_s),
    )


def energy_at_board(device: Device, fault_a: float | None) -> Energy | str:
    """Return the greatest energy of a fault close to the device, or why it is not known.

    Breakers of type B or C up to 40 A: the class 3 limit of the tabulated fault level that is not
    below the prospective current, as the minimum protective conductor table of the On-Site Guide
    takes it (memory), or the current for 0.1 s if that is less. Others: the current for 0.1 s,
    good only near the tripping current. gG fuses: total operating energy of the gates.
    """
    if fault_a is None:
        return "the greatest fault current is not known, so the energy let through is not"
    if device.standard in devices.FUSES:
        return _fuse_energy(device)
    why_not = _why_no_energy(device, fault_a)
    if why_not:
        return why_not
    limit = _class_limit(device.curve, device.rating_a, fault_a)
    classless = "" if limit else "; no energy class for this breaker, its maker's data may be less"
    for_a_tenth = Energy(
        fault_energy_a2s(fault_a, time_s=INSTANTANEOUS_S),
        f"({fault_a:.0f} A)² × {INSTANTANEOUS_S:g} s{classless}",
        "BS 7671 434.5.2, instantaneous operation",
    )
    if limit is None or for_a_tenth.energy_a2s <= limit.value:
        return for_a_tenth
    return Energy(
        limit.value,
        f"class 3 limit of {device.curve}{device.rating_a:g} at {fault_a / 1000:.2f} kA",
        f"{limit.source} ({limit.provenance})",
    )


def _why_no_energy(device: Device, fault_a: float) -> str:
    """Return why the energy a breaker lets through cannot be told, "" if it can."""
    at_once_a = _instantaneous_a(device)
    if math.isinf(at_once_a):
        return f"tripping current of {device.words} is not held, so its let-through energy is not"
    if fault_a < at_once_a:
        return f"{device.words} does not trip at once at {fault_a:.0f} A: energy is not known"
    if device.icn_ka is not None and fault_a > 1000 * device.icn_ka:
        return f"fault current {fault_a / 1000:.2f} kA is above Icn {device.icn_ka:g} kA"
    return ""


@cache
def _class_limit(curve: str, rating_a: float, fault_a: float) -> Figure | None:
    try:
        return devices.let_through_energy(curve, rating_a, fault_a)
    except OutsideTableError:
        return None


def _fuse_energy(device: Device) -> Energy | str:
    try:
        total = fuse_energy.total_energy(device.standard, device.rating_a)
    except OutsideTableError as outside:
        return str(outside)
    words = f"total operating energy of a {device.rating_a:g} A fuse to {device.standard}"
    return Energy(total.value, words, f"{total.source} ({total.provenance})")


def energy_at_far_end(device: Device, fault_a: float | None, time_s: float | None) -> Energy | str:
    """Return the energy of the least fault current, or why it is not known.

    At or above the instantaneous current of a breaker the fault lasts 0.1 s at most; below it, as
    long as the circuit may take. The energy of a fuse does not grow with the current, so above the
    current that operates it in time the energy of that current bounds it.
    """
    if fault_a is None or time_s is None:
        return "the least fault current is not known"
    if device.standard in devices.FUSES:
        return _fuse_energy_at(device, fault_a, time_s)
    lasts = time_s
    if device.standard in devices.BREAKERS and fault_a >= _instantaneous_a(device):
        lasts = INSTANTANEOUS_S
    found = Energy(
        fault_energy_a2s(fault_a, time_s=lasts),
        f"({fault_a:.0f} A)² × {lasts:g} s",
        "BS 7671 543.1.3",
    )
    limit = None
    if lasts == INSTANTANEOUS_S:
        limit = _class_limit(device.curve, device.rating_a, fault_a)
    if limit is None or limit.value >= found.energy_a2s:
        return found
    return Energy(limit.value, "class 3 limit at the least fault current", limit.source)


def _fuse_energy_at(device: Device, fault_a: float, time_s: float) -> Energy:
    carried = fault_a
    try:
        operates = devices.current_for_disconnection(device.standard, "", device.rating_a, time_s)
    except OutsideTableError:
        operates = None
    source = "BS 7671 543.1.3"
    if operates is not None and fault_a > operates.value:
        carried = operates.value
        source += f"; {operates.source} ({operates.provenance})"
    return Energy(
        fault_energy_a2s(carried, time_s=time_s), f"({carried:.0f} A)² × {time_s:g} s", source
    )


def _instantaneous_a(device: Device) -> float:
    if device.im_a is not None:
        return surely_trips_a(device.im_a).value
    try:
        return devices.magnetic_multiple(device.curve).value * device.rating_a
    except OutsideTableError:
        return math.inf
