"""One cable of a circuit at one size: rating, drop, impedances and heating under fault."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from asfitted.calculate.adiabatic import minimum_csa_for_energy_mm2
from asfitted.calculate.cable_facts import CableFacts, try_cable_facts
from asfitted.calculate.cable_rating import CableUse, LegRating, try_rate
from asfitted.calculate.earth_fault_loop import earth_fault_current_a
from asfitted.calculate.fault_current import C_MIN_LV
from asfitted.calculate.fault_protection import (
    Energy,
    LoopLimit,
    energy_at_board,
    energy_at_far_end,
)
from asfitted.calculate.network import Node, Voltages, beyond
from asfitted.calculate.voltage_drop import drop_per_ampere_metre, drop_percent, voltage_drop_v

if TYPE_CHECKING:
    from asfitted.resolve.installation import Cable, Device


@dataclass(frozen=True)
class Stretch:
    """One cable of a circuit, with all that does not depend on its size."""

    cable: Cable
    use: CableUse
    length_m: float
    current_a: float
    power_factor: float


@dataclass(frozen=True)
class Problem:
    """What a set of cables has to meet."""

    device: Device
    stretches: tuple[Stretch, ...]
    board: Node
    loop: LoopLimit
    drop_limit_pct: float | None
    volts: Voltages
    loaded: Literal[2, 3]
    is_feeder: bool = False
    is_ring: bool = False
    ring_middle_a: float = 0.0  # load at the middle of a ring that drops as much as all of it
    ring_power_factor: float = 1.0


@dataclass(frozen=True)
class Heating:
    """What a conductor needs under fault: the worse of the two ends, mm2 in its own material."""

    needed_mm2: float
    energy: Energy


@dataclass(frozen=True)
class RingPlace:
    """Where on a ring a cable ends, m from its first end, and the length of the ring, m."""

    end_m: float
    ring_m: float

    @property
    def two_ways_m(self) -> float:
        """Length of one cable that equals both ways round in parallel, m."""
        return self.end_m * (self.ring_m - self.end_m) / self.ring_m


@dataclass(frozen=True)
class Sized:
    """A stretch at one size; ``ring`` is set for a cable that is part of a ring."""

    stretch: Stretch
    facts: CableFacts
    rating: LegRating
    drop_v: float
    drop_pct: float
    near: Node
    far: Node
    line: Heating | str
    cpc: Heating | str
    ring: RingPlace | None = None


def size_stretch(problem: Problem, stretch: Stretch, csa_mm2: float, near: Node) -> Sized | str:
    """Return one stretch at one size, or why the tables do not hold it."""
    cable = stretch.cable
    facts = try_cable_facts(cable.family, cable.cores, csa_mm2, cable.cpc, problem.loaded)
    if isinstance(facts, str):
        return facts
    rating = try_rate(stretch.use, csa_mm2)
    if isinstance(rating, str):
        return rating
    drop_v, drop_pct = _drop(problem, stretch, facts)
    far = beyond(near, cable.to_end, facts, stretch.length_m, drop_pct)
    line, cpc = heating(problem, facts, near, far)
    return Sized(stretch, facts, rating, drop_v, drop_pct, near, far, line, cpc)


def _drop(problem: Problem, stretch: Stretch, facts: CableFacts) -> tuple[float, float]:
    per_a_m = drop_per_ampere_metre(
        r_mv_a_m=facts.drop.r_mv_a_m,
        x_mv_a_m=facts.drop.x_mv_a_m,
        power_factor=stretch.power_factor,
    )
    volts = voltage_drop_v(per_a_m, current_a=stretch.current_a, length_m=stretch.length_m)
    nominal = problem.volts.nominal_v(three_phase=problem.loaded == 3)
    return volts, drop_percent(volts, nominal_v=nominal)


def heating(
    problem: Problem, facts: CableFacts, near: Node, far: Node
) -> tuple[Heating | str, Heating | str]:
    """Return what the line and the protective conductor need under fault."""
    greatest = near.fault_max_3ph_a if problem.loaded == 3 else near.fault_max_1ph_a
    line = _needed(energy_at_board(problem.device, greatest), facts.k_line)
    if facts.k_cpc is None:
        return line, "the cable has no protective conductor"
    close = _needed(energy_at_board(problem.device, near.fault_max_1ph_a), facts.k_cpc)
    least = None if far.zs_ohm is None else least_fault_a(far.zs_ohm, far.u0_v)
    distant = _needed(energy_at_far_end(problem.device, least, problem.loop.time_s), facts.k_cpc)
    return line, _worse(close, distant)


def least_fault_a(zs_ohm: float, u0_v: float) -> float:
    """Return the least earth-fault current, A, with Cmin."""
    return earth_fault_current_a(max(zs_ohm, 1e-6), u0_v=u0_v, c=C_MIN_LV)


def _needed(energy: Energy | str, k: float) -> Heating | str:
    if isinstance(energy, str):
        return energy
    return Heating(minimum_csa_for_energy_mm2(energy.energy_a2s, k=k), energy)


def _worse(first: Heating | str, second: Heating | str) -> Heating | str:
    """Return the greater need; an end that is not known makes the whole not known."""
    if isinstance(first, str):
        return first
    if isinstance(second, str):
        return second
    return max(first, second, key=lambda need: need.needed_mm2)
