"""The figures of one circuit and of its cables, from the sizes chosen for it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

from asfitted.calculate.adiabatic import withstand_energy_a2s
from asfitted.calculate.cable_steps import cable_steps
from asfitted.calculate.fault_current import C_MAX_LV, C_MIN_LV
from asfitted.calculate.least_cpc import least_cpc
from asfitted.calculate.network import fault_of_ipf
from asfitted.calculate.neutral_current import harmonic_neutral_a
from asfitted.calculate.results import CableResult, CircuitResult, RingFigures
from asfitted.calculate.ring_sizing import ring_figures
from asfitted.calculate.sized_cable import Heating, Problem, Sized, least_fault_a
from asfitted.calculate.sizing import Choice, worst_drop, worst_loop
from asfitted.calculate.working import Step
from asfitted.errors import OutsideTableError
from asfitted.reference import cables

if TYPE_CHECKING:
    from asfitted.calculate.demand import Lines
    from asfitted.calculate.point_loads import Design
    from asfitted.resolve.installation import Circuit


@dataclass(frozen=True)
class Heat:
    """What the conductors of a circuit need under fault, and what they have."""

    cpc_needed_mm2: float | None = None
    cpc_has_mm2: float | None = None
    line_energy_a2s: float | None = None
    line_withstand_a2s: float | None = None
    steps: tuple[Step, ...] = ()
    unknown: tuple[str, ...] = ()
    cpc_of: str = ""  # tag of the cable whose cpc comes closest to its limit
    line_of: str = ""  # size and tag of the cable whose line does


def cable_results(problem: Problem, choice: Choice) -> tuple[CableResult, ...]:
    """Return the figures of each cable of a circuit that could be sized."""
    return tuple(_cable(problem, choice, one) for one in choice.sized)


def _cable(problem: Problem, choice: Choice, one: Sized) -> CableResult:
    cable, facts, rating = one.stretch.cable, one.facts, one.rating
    overall = _overall_mm(cable.family, cable.cores, facts.csa_mm2)
    unknown = [*one.far.unknown]
    if one.stretch.use.assumed:
        unknown.append(one.stretch.use.assumed)
    if one.far.drop_pct is None:
        unknown.append("drop before the board is not known: only the drop from it is given")
    if rating.doubt:
        unknown.append(rating.doubt)
    if overall is None:
        unknown.append("overall diameter is not in the tables")
    unknown += [part for part in (one.line, one.cpc) if isinstance(part, str)]
    loop = facts.loop_hot
    return CableResult(
        tag=cable.tag,
        circuit=cable.circuit,
        csa_mm2=facts.csa_mm2,
        cpc_mm2=facts.cpc_mm2 if facts.cpc_kind in ("core", "separate") else None,
        cpc_words=facts.cpc_words,
        size_chosen=cable.csa_mm2 is None,
        tried=choice.tried.get(cable.tag, ()),
        words=cable_words(one),
        overall_mm=overall or 0.0,
        design_current_a=one.stretch.current_a,
        method=rating.method,
        governing_section=rating.laid.words,
        group_count=rating.laid.count,
        tabulated_a=rating.tabulated.value,
        factors=rating.factors,
        capacity_a=rating.capacity_a,
        required_tabulated_a=rating.required_a,
        drop_v=one.drop_v,
        drop_to_end_pct=one.far.drop_pct if one.far.drop_pct is not None else one.drop_pct,
        r1r2_ohm=loop.real * one.stretch.length_m if loop is not None else 0.0,
        zs_end_ohm=one.far.zs_ohm,
        steps=cable_steps(one, problem.volts),
        not_known=tuple(dict.fromkeys(unknown)),
        capacity_doubt=rating.doubt,
    )


def cable_words(one: Sized) -> str:
    """Return the cable as it is written on drawings: "4c × 6 mm² XLPE/SWA/PVC"."""
    facts = one.facts
    family = cables.family(facts.family)
    make = family.legend.removesuffix(" armoured cable")
    if family.construction == "flat" and facts.cpc_kind == "core":
        return f"{facts.csa_mm2:g}/{facts.cpc_mm2:g} mm² {make}"
    return f"{facts.cores}c × {facts.csa_mm2:g} mm² {make}"


@cache
def _overall_mm(family: str, cores: int, csa_mm2: float) -> float | None:
    try:
        return cables.overall_diameter_mm(family, cores, csa_mm2).value
    except OutsideTableError:
        return None


def circuit_result(
    circuit: Circuit, design: Design, lines: Lines, problem: Problem, choice: Choice
) -> CircuitResult:
    """Return the figures of one circuit."""
    is_whole = bool(choice.sized) and len(choice.sized) == len(problem.stretches)
    drop = worst_drop(problem, choice.sized)[0] if is_whole else None
    zs = worst_loop(problem, choice.sized) if is_whole else None
    least = None if zs is None else least_fault_a(zs, problem.volts.u0_v)
    greatest = _fault_max_a(circuit, problem)
    heat = _heat(choice.sized) if is_whole else Heat()
    loop = problem.loop
    ring = ring_figures(choice.sized) if is_whole and problem.is_ring else None
    neutral = _neutral_a(circuit, design)
    unknown = [*design.unknown, *problem.board.unknown, *heat.unknown]
    unknown += _why_missing(circuit, problem, choice)
    return CircuitResult(
        tag=circuit.tag,
        design_current_a=design.current_a,
        demand_basis=design.basis,
        line_currents_a=lines,
        drop_pct=drop,
        drop_limit_pct=problem.drop_limit_pct,
        worst_point=_worst_point(choice) if is_whole else "",
        zs_ohm=zs,
        zs_limit_ohm=loop.zs_ohm,
        zs_limit_measured_ohm=loop.measured_ohm,
        zs_limit_source="; ".join(part for part in (loop.source, loop.note) if part),
        disconnection_limit_s=loop.time_s,
        fault_min_a=least,
        fault_max_ka=None if greatest is None else greatest / 1000,
        cpc_needed_mm2=heat.cpc_needed_mm2,
        cpc_has_mm2=heat.cpc_has_mm2,
        line_energy_a2s=heat.line_energy_a2s,
        line_withstand_a2s=heat.line_withstand_a2s,
        steps=(
            *design.steps,
            _rating_step(circuit),
            *_drop_steps(drop, problem, loaded_to=_worst_point(choice) if is_whole else ""),
            *loop.steps,
            *_fault_steps(circuit, problem, zs, least, greatest),
            *heat.steps,
            *_ring_steps(ring),
            *_harmonic_steps(circuit, design, neutral),
        ),
        not_known=tuple(dict.fromkeys(unknown)),
        ring=ring,
        least_cpc=least_cpc(choice.sized) if is_whole else None,
        cpc_checked=heat.cpc_of,
        line_checked=heat.line_of,
        neutral_a=neutral,
    )


def _neutral_a(circuit: Circuit, design: Design) -> float | None:
    """Return the current in the neutral of a circuit, A: that of the line, or of harmonics."""
    if design.current_a is None or circuit.phase != "TP":
        return design.current_a
    if circuit.third_harmonic_pct is None or design.current_a == 0:
        return None
    return harmonic_neutral_a(design.current_a, third_harmonic_percent=circuit.third_harmonic_pct)


def _harmonic_steps(circuit: Circuit, design: Design, neutral: float | None) -> tuple[Step, ...]:
    if circuit.phase != "TP" or neutral is None:
        return ()
    terms = f"3 × {circuit.third_harmonic_pct or 0:g} % × {design.current_a or 0:.2f} A"
    words = "current of third harmonics in the neutral"
    source = "BS 7671 Appendix 4, 5.5; IEC 60364-5-52 Annex E"
    return (Step("IN", words, "3 × h3 × Ib", terms, neutral, "A", source),)


def _ring_steps(ring: RingFigures | None) -> tuple[Step, ...]:
    """Return what a test of the ring should read, at 20 °C."""
    if ring is None:
        return ()
    source = "BS 7671 643.2.1, Guidance Note 3"
    rows = [("r1", "line end to end, 20 °C", ring.r1_ohm), ("rn", "neutral", ring.rn_ohm)]
    if ring.r2_ohm is not None:
        rows.append(("r2", "protective conductor", ring.r2_ohm))
    terms = f"{ring.length_m:.2f} m round the ring"
    found = [Step(s, f"{w} of the ring", "r × L", terms, ohm, "Ω", source) for s, w, ohm in rows]
    if ring.quarter_ohm is not None and ring.r2_ohm is not None:
        words = "to expect at each socket-outlet when cross-connected, 20 °C"
        terms = f"({ring.r1_ohm:.3f} + {ring.r2_ohm:.3f}) Ω / 4"
        found.append(Step("R1+R2", words, "(r1 + r2) / 4", terms, ring.quarter_ohm, "Ω", source))
    return tuple(found)


def _why_missing(circuit: Circuit, problem: Problem, choice: Choice) -> list[str]:
    loop = problem.loop
    no_limit = [] if loop.zs_ohm is not None else [f"no limit of Zs: {loop.source}"]
    if not circuit.cables:
        existing = circuit.state == "existing"
        return [*no_limit, "existing cable not recorded" if existing else "no cable is given"]
    if not problem.stretches:
        return [*no_limit, "no way was found for a cable of the circuit"]
    if problem.board.drop_pct is None:
        no_limit.append("drop before the board is not known")
    tables = [failure.reason for failure in choice.failures if failure.kind == "table"]
    return [*no_limit, *tables]


def _fault_max_a(circuit: Circuit, problem: Problem) -> float | None:
    board = problem.board
    return board.fault_max_3ph_a if circuit.phase == "TP" else board.fault_max_1ph_a


def _worst_point(choice: Choice) -> str:
    def drop(one: Sized) -> float:
        return one.far.drop_pct if one.far.drop_pct is not None else one.drop_pct

    return max(choice.sized, key=drop).far.tag


def _rating_step(circuit: Circuit) -> Step:
    return Step(
        symbol="In",
        words=f"rating of its {circuit.device.words}, to be no less than Ib",
        formula="",
        substituted="",
        value=circuit.device.rating_a,
        unit="A",
        source=f"BS 7671 433.1.1; device to {circuit.device.standard}",
    )


def _drop_steps(drop: float | None, problem: Problem, *, loaded_to: str) -> tuple[Step, ...]:
    """Return the greatest drop allowed and, where it is known, the drop to the worst point."""
    limit = problem.drop_limit_pct
    found = []
    if drop is not None:
        before = problem.board.drop_pct or 0.0
        found.append(
            Step(
                symbol="Vd max",
                words=f"drop from the origin to {loaded_to}, the worst point",
                formula="drop at the board + drop from the board",
                substituted=f"{before:.2f} % + {drop - before:.2f} %",
                value=drop,
                unit="%",
                source="BS 7671 Appendix 4, 6.4",
            )
        )
    if limit is not None:
        found.append(
            Step(
                symbol="Vd limit",
                words="greatest drop from the origin; 0.005 % more per metre beyond 100 m",
                formula="",
                substituted="",
                value=limit,
                unit="%",
                source="BS 7671 Appendix 4, 6.4 and its table of drops (memory)",
            )
        )
    return tuple(found)


def _fault_steps(
    circuit: Circuit,
    problem: Problem,
    zs: float | None,
    least: float | None,
    greatest: float | None,
) -> tuple[Step, ...]:
    found = []
    which = fault_of_ipf(3 if circuit.phase == "TP" else 1)
    u0 = problem.volts.u0_v
    if zs is not None and least is not None:
        found.append(
            Step(
                symbol="If min",
                words="least earth-fault current, at the far end",
                formula="Cmin × U0 / Zs",
                substituted=f"{C_MIN_LV:g} × {u0:g} V / {zs:.4f} Ω",
                value=least,
                unit="A",
                source="BS 7671 411.4.4",
            )
        )
    if greatest is not None:
        found.append(
            Step(
                symbol="Ik max",
                words=f"greatest fault current at {problem.board.tag}, {which}",
                formula="Cmax × U0 / |Z|",
                substituted=f"{C_MAX_LV:g} × {u0:g} V / {C_MAX_LV * u0 / greatest:.4f} Ω",
                value=greatest / 1000,
                unit="kA",
                source="IEC 60909-0, from the prospective fault current at the origin, cold",
            )
        )
    return tuple(found)


def _heat(sized: tuple[Sized, ...]) -> Heat:
    """Return the conductor that comes closest to its limit, line and protective apart."""
    unknown = [part for one in sized for part in (one.line, one.cpc) if isinstance(part, str)]
    lines = [(one, one.line) for one in sized if isinstance(one.line, Heating)]
    cpcs = [(one, one.cpc) for one in sized if isinstance(one.cpc, Heating)]
    needed = has = energy = withstand = None
    cpc_of = line_of = ""
    steps = []
    if len(cpcs) == len(sized):
        one, need = max(cpcs, key=lambda pair: pair[1].needed_mm2 / (pair[0].facts.cpc_mm2 or 1))
        needed, has, cpc_of = need.needed_mm2, one.facts.cpc_mm2, one.stretch.cable.tag
        steps.append(_heat_step("S cpc", one.facts.cpc_words, need, one.facts.k_cpc or 0.0))
    if len(lines) == len(sized):
        one, need = max(lines, key=lambda pair: pair[1].needed_mm2 / pair[0].facts.csa_mm2)
        energy = need.energy.energy_a2s
        withstand = withstand_energy_a2s(one.facts.csa_mm2, k=one.facts.k_line)
        line_of = f"{one.facts.csa_mm2:g} mm² in {one.stretch.cable.tag}"
        words = f"line {line_of}"
        steps.append(_heat_step("S line", words, need, one.facts.k_line))
        steps.append(_withstand_step(one, withstand))
    why = tuple(dict.fromkeys(unknown))
    return Heat(needed, has, energy, withstand, tuple(steps), why, cpc_of, line_of)


def _withstand_step(one: Sized, withstand_a2s: float) -> Step:
    return Step(
        symbol="k²S²",
        words=f"energy that the line {one.facts.csa_mm2:g} mm² stands",
        formula="k² × S²",
        substituted=f"{one.facts.k_line:g}² × ({one.facts.csa_mm2:g} mm²)²",
        value=withstand_a2s,
        unit="A²s",
        source="BS 7671 434.5.2, k of Table 43.1",
    )


def _heat_step(symbol: str, words: str, need: Heating, k: float) -> Step:
    return Step(
        symbol=symbol,
        words=f"least size under fault of the {words}; {need.energy.words}",
        formula="√(I²t) / k",
        substituted=f"√({need.energy.energy_a2s:.0f} A²s) / {k:g}",
        value=need.needed_mm2,
        unit="mm²",
        source=f"BS 7671 543.1.3, 434.5.2; {need.energy.source}",
    )
