"""The current each point of a circuit takes, and the circuit's design current Ib."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.calculate.design_current import single_phase_current_a, three_phase_current_a
from asfitted.calculate.working import Step
from asfitted.reference.loader import table

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.network import Voltages
    from asfitted.resolve.installation import Circuit, PointServed

MOTOR_KINDS = frozenset({"motor", "fan"})
SOCKET_13A = "13 A socket"
PASSES_SUPPLY_ON = frozenset(
    {"isolator", "fused spur", "light switch", "junction box", "motor starter"}
)
RING_AT_ONE_PLACE_A = 20.0
DEVICE_RATING = "rating of the device, no diversity within the circuit"


@dataclass(frozen=True)
class Load:
    """A current with its power factor and how it was got."""

    current_a: float
    power_factor: float
    words: str


@dataclass(frozen=True)
class Design:
    """Design current of a circuit.

    Attributes:
        current_a: Ib, A; None when nothing says what the load is.
        power_factor: Of the circuit as a whole.
        basis: How Ib was got, in words.
        at_points: Load taken at each point; empty when only the whole is known.
        steps: Working.
        unknown: Why a figure is missing or assumed.
        ring_middle_a: For a ring of socket-outlets: load at its middle that drops as much, A.
    """

    current_a: float | None
    power_factor: float
    basis: str
    at_points: Mapping[str, Load] = field(default_factory=lambda: MappingProxyType({}))
    steps: tuple[Step, ...] = ()
    unknown: tuple[str, ...] = ()
    ring_middle_a: float | None = None


@cache
def motor_full_load_a(power_kw: float) -> float | None:
    """Return the full-load current of a 400 V motor, A, of the next rating held, or None."""
    held = table("fault", "motors").extra["fla_400v_a"]
    return next((float(row["a"]) for row in held if row["kw"] >= power_kw - 1e-9), None)


def power_load(
    power_w: float, power_factor: float, volts: Voltages, *, three_phase: bool, motor: bool
) -> Load:
    """Return the load of a power in watts.

    A three-phase motor given by its rated power takes the typical full-load current of that
    rating where it is the larger (common practice); otherwise the power is input power.
    """
    kilowatts = power_w / 1000
    if not three_phase:
        amps = single_phase_current_a(kilowatts, power_factor=power_factor, voltage_v=volts.u0_v)
        words = f"{power_w:g} W / ({volts.u0_v:g} V × {power_factor:g})"
        return Load(amps, power_factor, words)
    amps = three_phase_current_a(kilowatts, power_factor=power_factor, line_voltage_v=volts.line_v)
    full_load = motor_full_load_a(kilowatts) if motor and volts.line_v == 400 else None
    if full_load is not None and full_load > amps:
        words = f"{kilowatts:g} kW motor, typical full-load current at 400 V"
        return Load(full_load, power_factor, words)
    words = f"{power_w:g} W / (√3 × {volts.line_v:g} V × {power_factor:g})"
    return Load(amps, power_factor, words)


def _point_load(point: PointServed, volts: Voltages, *, three_phase: bool) -> Load | None:
    if point.load_a is not None:
        return Load(point.load_a, point.power_factor, f"{point.load_a:g} A given")
    if point.load_w is None:
        return None
    return power_load(
        point.load_w,
        point.power_factor,
        volts,
        three_phase=three_phase,
        motor=point.kind in MOTOR_KINDS,
    )


def design(circuit: Circuit, points: Sequence[PointServed], volts: Voltages) -> Design:
    """Return the design current of a circuit that feeds no board.

    13 A socket-outlets: the rating of the device, taken at the last point (safe side for drop).
    Other points: the sum of their loads. A point that only passes the supply on counts nothing
    unless it is the last. A point whose load is not given: the rating of the device, said so.
    """
    if circuit.load_w is not None or circuit.load_a is not None:
        return _given_as_a_whole(circuit, volts)
    if circuit.ring and any(point.kind == SOCKET_13A for point in points):
        return _ring_of_sockets(circuit, points)
    if any(point.kind == SOCKET_13A for point in points):
        last = points[-1].tag
        return _by_device(circuit, last, f"13 A socket-outlets: {DEVICE_RATING}")
    if not points:
        if circuit.state == "existing":
            return Design(None, 1.0, "not recorded", unknown=("load not recorded",))
        return _by_device(circuit, "", f"no load is given: {DEVICE_RATING}")
    return _sum_of_points(circuit, points, volts)


def _ring_of_sockets(circuit: Circuit, points: Sequence[PointServed]) -> Design:
    """Return In shared among the outlets of a ring, and what drops as much at its middle.

    20 A at the middle and the rest evenly round the ring drop as much as 20 A and half of the rest
    at the middle (On-Site Guide, ring final circuits; memory).
    """
    rating_a = circuit.device.rating_a
    outlets = {point.tag: max(point.gangs, 1) for point in points if point.kind == SOCKET_13A}
    each_a = rating_a / sum(outlets.values())
    at = {tag: Load(each_a * gangs, 1.0, "share of In") for tag, gangs in outlets.items()}
    first = min(rating_a, RING_AT_ONE_PLACE_A)
    middle = first + (rating_a - first) / 2
    step = _step(rating_a, "design current of the ring", "In", f"{rating_a:g} A")
    drop = Step(
        "I middle",
        "load at the middle of the ring that drops as much as all of it",
        "20 A + (In - 20 A) / 2",
        f"{first:g} A + ({rating_a:g} A - {first:g} A) / 2",
        middle,
        "A",
        "On-Site Guide, ring final circuits (memory)",
    )
    basis = f"ring of 13 A socket-outlets: {DEVICE_RATING}"
    return Design(rating_a, 1.0, basis, MappingProxyType(at), (step, drop), ring_middle_a=middle)


def _by_device(circuit: Circuit, last: str, basis: str) -> Design:
    load = Load(circuit.device.rating_a, 1.0, f"In of {circuit.device.words}")
    return Design(
        load.current_a,
        1.0,
        basis,
        MappingProxyType({last: load} if last else {}),
        (_step(load.current_a, "design current", "In", f"{load.current_a:g} A"),),
    )


def _step(value: float, words: str, formula: str, substituted: str) -> Step:
    return Step("Ib", words, formula, substituted, value, "A", "BS 7671 433.1.1")


def _given_as_a_whole(circuit: Circuit, volts: Voltages) -> Design:
    if circuit.load_a is not None:
        load = Load(circuit.load_a, circuit.power_factor, f"{circuit.load_a:g} A")
    else:
        load = power_load(
            circuit.load_w or 0.0,
            circuit.power_factor,
            volts,
            three_phase=circuit.phase == "TP",
            motor=circuit.use == "motor",
        )
    last = circuit.points[-1] if circuit.points else ""
    step = _step(load.current_a, "design current of the circuit as given", "load", load.words)
    at = MappingProxyType({last: load} if last else {})
    return Design(load.current_a, load.power_factor, "load given for the circuit", at, (step,))


def _sum_of_points(circuit: Circuit, points: Sequence[PointServed], volts: Voltages) -> Design:
    three_phase = circuit.phase == "TP"
    at: dict[str, Load] = {}
    for place, point in enumerate(points):
        load = _point_load(point, volts, three_phase=three_phase)
        is_last = place == len(points) - 1
        if load is None and (is_last or point.kind not in PASSES_SUPPLY_ON):
            load = _rated(point, circuit, any_load=bool(at))
            if load is None:
                basis = f"load of {point.tag} is not given: {DEVICE_RATING}"
                return _by_device(circuit, points[-1].tag, basis)
        if load is not None and load.current_a > 0:
            at[point.tag] = load
    total = sum(load.current_a for load in at.values())
    working = sum(load.current_a * load.power_factor for load in at.values())
    basis = "sum of the loads at its points" if len(at) > 1 else "load at its point"
    terms = " + ".join(f"{tag} {load.words}" for tag, load in at.items()) or "no load"
    step = _step(total, basis, "sum of loads", terms)
    return Design(total, working / total if total else 1.0, basis, MappingProxyType(at), (step,))


def _rated(point: PointServed, circuit: Circuit, *, any_load: bool) -> Load | None:
    """Return the load of a point of which only the rating is known, or None if unknown."""
    rating = point.fuse_a if point.fuse_a is not None else point.rating_a
    if point.kind in PASSES_SUPPLY_ON and any_load:
        return Load(0.0, 1.0, "passes the supply on")
    if rating is None:
        return None
    amps = min(rating, circuit.device.rating_a)
    return Load(amps, 1.0, f"{amps:g} A, its rating")


def currents_along(
    ends: Sequence[tuple[str, str]], whole: Design
) -> tuple[tuple[float, float], ...]:
    """Return the current, A, and power factor in each cable of a circuit, in order.

    Args:
        ends: From and to tag of each cable, outward from the board; a circuit may branch.
        whole: Design of the circuit; where it names no point the whole current flows to the end.
    """
    if not whole.at_points or whole.current_a is None:
        return tuple((whole.current_a or 0.0, whole.power_factor) for _ in ends)
    beyond: dict[str, tuple[float, float]] = {}
    found: list[tuple[float, float]] = []
    for start, end in reversed(ends):
        own = whole.at_points.get(end)
        amps, working = beyond.get(end, (0.0, 0.0))
        if own is not None:
            amps, working = amps + own.current_a, working + own.current_a * own.power_factor
        before = beyond.get(start, (0.0, 0.0))
        beyond[start] = (before[0] + amps, before[1] + working)
        found.append((amps, min(1.0, working / amps) if amps else 1.0))
    return tuple(reversed(found))
