"""Impedances and drop from the source to every node: the origin, each board, each cable end.

Two sums are kept apart. The greatest fault currents use the declared or measured prospective
current at the origin and cold conductors (20 C). The loop impedance, and the least fault current
that follows from it, use Ze and conductors at working temperature. The greatest fault current is
never worked out from Ze.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cache
from typing import TYPE_CHECKING

from asfitted.calculate.earth_fault_loop import conductor_resistance_ohm, loop_impedance_ohm
from asfitted.calculate.fault_current import (
    C_MAX_LV,
    loop_fault_a,
    source_impedance_from_current_ohm,
    three_phase_fault_a,
)
from asfitted.calculate.results import OriginResult
from asfitted.calculate.source_impedance import source_impedance
from asfitted.calculate.voltage_drop import drop_percent
from asfitted.calculate.working import Step
from asfitted.reference import conductors
from asfitted.reference.loader import table
from asfitted.resolve.installation import Basis, Known, Transformer

if TYPE_CHECKING:
    from asfitted.calculate.cable_facts import CableFacts
    from asfitted.resolve.installation import Board, Supply

NOMINAL_U0_V, NOMINAL_LINE_V = 230.0, 400.0
TAILS_HOT_C = 70.0


@dataclass(frozen=True)
class Voltages:
    """Nominal voltages that every percentage and current of the job uses."""

    u0_v: float
    line_v: float
    given: bool

    def nominal_v(self, *, three_phase: bool) -> float:
        """Return the voltage a drop is measured against, V."""
        return self.line_v if three_phase else self.u0_v


@dataclass(frozen=True)
class Node:
    """The network as seen at one place.

    Attributes:
        tag: Board, point or "origin".
        line_ohm: One line conductor back to the source, cold; None when not known or one phase.
        neutral_loop_ohm: Line and neutral back to the source, cold.
        external_ohm: Ze, or the measured Zs of a board that the sum starts from.
        loop_ohm: R1 + R2 (and X) from there, at working temperature.
        drop_pct: Voltage drop from the origin, per cent.
        unknown: Why a figure is None, or what it was taken from for want of a given one.
        external_words: What the loop starts from.
        fault_words: What the greatest fault currents start from.
        steps: Working of figures that are calculated at the origin.
    """

    tag: str
    line_ohm: complex | None
    neutral_loop_ohm: complex | None
    external_ohm: float | None
    loop_ohm: complex | None
    drop_pct: float | None
    u0_v: float
    unknown: tuple[str, ...] = ()
    external_words: str = "Ze"
    fault_words: str = "prospective current as given"
    steps: tuple[Step, ...] = ()

    @property
    def zs_ohm(self) -> float | None:
        """Earth-fault loop impedance, ohm: Ze plus the size of R1 + R2, the safe side."""
        if self.external_ohm is None or self.loop_ohm is None:
            return None
        return loop_impedance_ohm(self.external_ohm, r1_plus_r2_ohm=abs(self.loop_ohm))

    @property
    def fault_max_3ph_a(self) -> float | None:
        """Greatest three-phase fault current, A."""
        if self.line_ohm is None:
            return None
        return three_phase_fault_a(self.line_ohm, line_voltage_v=math.sqrt(3.0) * self.u0_v)

    @property
    def fault_max_1ph_a(self) -> float | None:
        """Greatest line-to-neutral fault current, A; a bound for a fault to earth too."""
        if self.neutral_loop_ohm is None:
            return None
        return loop_fault_a(self.neutral_loop_ohm, return_ohm=0j, u0_v=self.u0_v)


def voltages(supply: Supply | None) -> Voltages:
    """Return the nominal voltages of the job; 230/400 V stands in where no supply is given."""
    if supply is None:
        return Voltages(NOMINAL_U0_V, NOMINAL_LINE_V, given=False)
    return Voltages(supply.u0_v, supply.line_v, given=True)


@cache
def source_power_factor(ipf_ka: float) -> float:
    """Return the power factor of a fault current at the source (BS EN 61439-1 Table 7).

    A source taken as partly reactive gives a larger current after resistive cable than a plain
    sum of ohms, which is the safe side for the greatest current.
    """
    row = table("fault", "peak").row(name="n ratio BS EN 61439-1 Table 7")
    for band in row["rows"]:
        upper = str(band["ik_ka"]).lstrip("<=").split("-")[-1]
        if upper.startswith(">") or ipf_ka <= float(upper):
            return float(band["pf"])
    raise AssertionError(ipf_ka)  # the last band has no upper end


def _source(ipf_ka: float, u0_v: float) -> complex:
    cosine = source_power_factor(ipf_ka)
    return source_impedance_from_current_ohm(
        1000 * ipf_ka, voltage_v=u0_v, x_over_r=math.tan(math.acos(cosine)), c=C_MAX_LV
    )


def fault_of_ipf(phases: int) -> str:
    """Return which fault a prospective current is taken to be of, on so many phases."""
    return "three-phase" if phases == 3 else "line to neutral"


def line_to_neutral_ka(ipf_ka: float, phases: int) -> float:
    """Return the line-to-neutral fault current of a prospective one, kA.

    Half of a three-phase one (common practice, Guidance Note 3: neutral like line).
    """
    return ipf_ka / 2 if phases == 3 else ipf_ka


def _faults_from(
    ipf: Known | None, u0_v: float, phases: int
) -> tuple[complex | None, complex | None]:
    """Return line and line-neutral source impedances from a prospective current.

    On three phases the current is three-phase and the line-neutral one is taken as half of it
    (common practice, Guidance Note 3: neutral like line); on one phase it is line to neutral.
    """
    if ipf is None or ipf.value <= 0:
        return None, None
    source = _source(ipf.value, u0_v)
    return (source, 2 * source) if phases == 3 else (None, source)


def origin(supply: Supply | None) -> Node:
    """Return the origin of the installation."""
    if supply is None:
        why = ("no supply is given: voltages taken as 230/400 V",)
        return Node("origin", None, None, None, None, 0.0, NOMINAL_U0_V, why)
    line, neutral = _faults_from(supply.ipf_ka, supply.u0_v, supply.phases)
    external = supply.ze_ohm or supply.electrode_ohm
    node = Node(
        tag="origin",
        line_ohm=line,
        neutral_loop_ohm=neutral,
        external_ohm=external.value if external else None,
        loop_ohm=0j,
        drop_pct=0.0,
        u0_v=supply.u0_v,
    )
    node = _with_source(node, supply)
    unknown = [*node.unknown]
    if node.neutral_loop_ohm is None:
        unknown.append("prospective fault current at the origin is not recorded")
    if node.external_ohm is None:
        unknown.append("Ze is not recorded")
    return replace(node, unknown=tuple(unknown))


def _with_source(node: Node, supply: Supply) -> Node:
    """Fill what is not given from the transformer or generator, and say so.

    A given figure always stands. Ze is calculated for TN systems only: the electrode of a TT
    system is not in the machine.
    """
    source = source_impedance(supply)
    if source is None:
        return node
    machine = "transformer" if isinstance(supply.source, Transformer) else "generator"
    calculated = []
    if node.neutral_loop_ohm is None:
        line = source.line_ohm if supply.phases == 3 else None
        words = f"calculated from the {machine}"
        node = replace(
            node, line_ohm=line, neutral_loop_ohm=source.neutral_loop_ohm, fault_words=words
        )
        calculated.append("greatest fault current")
    if node.external_ohm is None and supply.system != "TT" and source.earth_loop_ohm is not None:
        words = f"Ze calculated from the {machine}"
        node = replace(node, external_ohm=abs(source.earth_loop_ohm), external_words=words)
        calculated.append("Ze")
    if not calculated:
        return node
    what = " and ".join(calculated)
    verb = "is" if len(calculated) == 1 else "are"
    beside = "" if len(calculated) == 2 or supply.ze_ohm is None else ", beside a given Ze"
    note = f"{what} {verb} calculated from the {machine}, not measured{beside}"
    return replace(node, unknown=(note, *source.unknown), steps=source.steps)


def origin_result(node: Node, supply: Supply | None) -> OriginResult:
    """Return the figures of the origin with the word for how each is known."""
    given_ze = (supply.ze_ohm or supply.electrode_ohm) if supply else None
    given_ka = supply.ipf_ka if supply else None
    three, one = node.fault_max_3ph_a, node.fault_max_1ph_a

    def fault(amps: float | None) -> Known | None:
        basis = given_ka.basis if given_ka else Basis.CALCULATED
        return None if amps is None else Known(amps / 1000, "kA", basis)

    ze = given_ze
    if ze is None and node.external_ohm is not None:
        ze = Known(node.external_ohm, "ohm", Basis.CALCULATED)
    return OriginResult(ze, fault(three), fault(one), node.steps, node.unknown)


def after_tails(node: Node, supply: Supply, demand_a: float) -> tuple[Node, tuple[Step, ...]]:
    """Return the board at the origin, the meter tails and earthing conductor included.

    The tails count in Zs and in the drop; they are left out of the greatest fault current (safe
    side). The earthing conductor is taken as long as the tails, which is not recorded. Nothing is
    added when the tails are not recorded.
    """
    if not supply.tails_mm2 or not supply.tails_m:
        return node, ()
    rise = conductors.temperature_factor(TAILS_HOT_C).value
    line_r20 = conductors.resistance_20c(supply.tails_mm2)
    earth_mm2 = supply.earthing_conductor_mm2 or supply.tails_mm2
    earth_r20 = conductors.resistance_20c(earth_mm2)
    line = conductor_resistance_ohm(
        line_r20.value, length_m=supply.tails_m, temperature_factor=rise
    )
    earth = conductor_resistance_ohm(
        earth_r20.value, length_m=supply.tails_m, temperature_factor=rise
    )
    conductors_in_loop = 1 if supply.phases == 3 else 2
    drop_v = conductors_in_loop * line * demand_a
    pct = drop_percent(drop_v, nominal_v=supply.u0_v)
    step = Step(
        symbol="R1+R2 tails",
        words=f"tails {supply.tails_mm2:g} mm² and earthing conductor {earth_mm2:g} mm², the "
        "earthing conductor taken as long as the tails",
        formula="(r1 + r2) × L × factor",
        substituted=f"({line_r20.value:g} + {earth_r20.value:g}) mΩ/m × {supply.tails_m:g} m × "
        f"{rise:.2f}",
        value=line + earth,
        unit="Ω",
        source=f"{line_r20.source} ({line_r20.provenance}); factor to {TAILS_HOT_C:g} °C",
    )
    loop = (node.loop_ohm or 0j) + line + earth
    return replace(node, loop_ohm=loop, drop_pct=(node.drop_pct or 0.0) + pct), (step,)


def beyond(node: Node, tag: str, facts: CableFacts, length_m: float, drop_pct: float) -> Node:
    """Return the node at the far end of a cable.

    Args:
        node: Where the cable starts.
        tag: Its far end.
        facts: The cable, per metre.
        length_m: Its length, m.
        drop_pct: Its own voltage drop, per cent of nominal.
    """
    cold = facts.line_cold * length_m
    loop_hot = facts.loop_hot
    line = node.line_ohm
    unknown = node.unknown
    if loop_hot is None:
        unknown = (*unknown, "the cable has no protective conductor: Zs is not known")
    return Node(
        tag=tag,
        line_ohm=line + cold if line is not None and facts.loaded == 3 else None,
        neutral_loop_ohm=_plus(node.neutral_loop_ohm, 2 * cold),
        external_ohm=node.external_ohm,
        loop_ohm=None if loop_hot is None else _plus(node.loop_ohm, loop_hot * length_m),
        drop_pct=None if node.drop_pct is None else node.drop_pct + drop_pct,
        u0_v=node.u0_v,
        unknown=unknown,
        external_words=node.external_words,
        fault_words=node.fault_words,
    )


def _plus(first: complex | None, more: complex) -> complex | None:
    return None if first is None else first + more


def tails_ohm(supply: Supply) -> complex:
    """Return one conductor of the meter tails at working temperature, ohm; 0 if not recorded."""
    if not supply.tails_mm2 or not supply.tails_m:
        return 0j
    rise = conductors.temperature_factor(TAILS_HOT_C).value
    r20 = conductors.resistance_20c(supply.tails_mm2).value
    return complex(
        conductor_resistance_ohm(r20, length_m=supply.tails_m, temperature_factor=rise), 0
    )


def not_reached(board: Board, why: str, u0_v: float) -> Node:
    """Return a board whose feeder is not known: only what was measured there is known."""
    blank = Node(board.tag, None, None, None, None, None, u0_v, (why,))
    return with_readings(blank, board)


def with_readings(node: Node, board: Board) -> Node:
    """Return the node with the figures measured or declared at the board in place of sums.

    A given Zs starts the loop anew; a given prospective current starts the fault currents anew.
    """
    node = replace(node, tag=board.tag)
    if board.zs_ohm is not None:
        words = "Zs as given at the board"
        node = replace(node, external_ohm=board.zs_ohm.value, loop_ohm=0j, external_words=words)
    if board.ipf_ka is not None:
        line, neutral = _faults_from(board.ipf_ka, node.u0_v, board.phases)
        words = "prospective current as given"
        node = replace(node, line_ohm=line, neutral_loop_ohm=neutral, fault_words=words)
    return node
