"""The working of one circuit: load, device, each cable, drop, earth fault, fault current."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.explain.explanation import Explanation, Margin, Part, cautions_of, margin
from asfitted.rounding import rounded

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.calculate.results import CableRoute, CalculationResults, CircuitResult
    from asfitted.calculate.working import Step
    from asfitted.check.run import CheckReport
    from asfitted.resolve.installation import Circuit, Installation

#: Title of a part, and the symbols of the circuit's steps that stand in it.
PARTS = (
    ("Voltage drop", ("Vd max", "Vd limit")),
    ("Earth fault", ("t", "Zs max", "Zs read", "If min")),
    ("Fault current and heat", ("Ik max", "S cpc", "S line", "k²S²")),
)
LOAD_PART = "Load and device"
NOT_RECORDED = "not recorded"


def explain_circuit(
    tag: str, installation: Installation, results: CalculationResults, report: CheckReport
) -> Explanation:
    """Return the working of one circuit."""
    circuit = installation.circuits[tag]
    result = results.circuits.get(tag)
    parts = _parts(circuit, result, results)
    place = "" if circuit.place == NOT_RECORDED else f", {circuit.place}"
    subjects = {tag, *circuit.cables, *circuit.points}
    unknown: list[str] = list(result.not_known) if result else ["no figure of this circuit"]
    for cable in circuit.cables:
        held = results.cables.get(cable)
        unknown += [f"{cable}: {words}" for words in (held.not_known if held else ())]
    return Explanation(
        tag=tag,
        heading=f"Circuit {tag}: {circuit.name}{place}",
        facts=_facts(circuit, installation, results),
        parts=parts,
        margins=_margins(circuit, result, results),
        findings=tuple(f for f in report.findings if f.subject in subjects),
        not_known=tuple(dict.fromkeys(unknown)),
        cautions=cautions_of(parts),
    )


def _facts(
    circuit: Circuit, installation: Installation, results: CalculationResults
) -> tuple[tuple[str, str], ...]:
    cables = []
    for tag in circuit.cables:
        found = results.cables.get(tag)
        chosen = "size chosen here" if found and found.size_chosen else "size given"
        cables.append(f"{tag} {found.words} ({chosen})" if found else f"{tag} not sized")
    served = [f"{tag} {installation.points[tag].words}" for tag in circuit.points]
    if circuit.feeds_board:
        served.append(f"feeds {circuit.feeds_board}")
    device = circuit.device
    return (
        ("State", str(circuit.state)),
        ("Device", f"{device.words} ({device.standard})"),
        ("Serves", "; ".join(served) or NOT_RECORDED),
        ("Cables", "; ".join(cables) or NOT_RECORDED),
    )


def _parts(
    circuit: Circuit, result: CircuitResult | None, results: CalculationResults
) -> tuple[Part, ...]:
    steps = result.steps if result else ()
    placed = {symbol for _, symbols in PARTS for symbol in symbols}
    found = [Part(LOAD_PART, tuple(s for s in steps if s.symbol not in placed))]
    found += cable_parts(circuit.cables, results)
    found += [Part(title, _with(steps, symbols)) for title, symbols in PARTS]
    return tuple(part for part in found if part.steps or part.lines)


def _with(steps: Iterable[Step], symbols: tuple[str, ...]) -> tuple[Step, ...]:
    return tuple(step for step in steps if step.symbol in symbols)


def cable_parts(cables: Iterable[str], results: CalculationResults) -> list[Part]:
    """Return the working of power cables, each with its way and the sizes tried."""
    found = []
    for tag in cables:
        cable, route = results.cables.get(tag), results.routes.get(tag)
        lines = way_lines(route) if route else ("no way was found",)
        if cable is None:
            found.append(Part(f"Cable {tag}: not sized", lines=lines))
            continue
        found.append(Part(f"Cable {tag}: {cable.words}", cable.steps, lines, cable.tried))
    return found


def way_lines(route: CableRoute) -> tuple[str, ...]:
    """Return the way of a cable in words, and the sum of its length."""
    if route.broken:
        return (f"no way was found: {route.broken}",)
    way = "; ".join(dict.fromkeys(leg.words for leg in route.legs if leg.words))
    terms = " + ".join(f"{part.words} {rounded(part.length_m, 2)} m" for part in route.parts)
    measured = "measured on site" if route.measured else "drawn way with tails"
    lines = [f"Way: {way}"] if way else []
    lines.append(
        f"Length: {rounded(route.length_m, 2)} m, {measured}; to cut {rounded(route.cut_m, 1)} m"
    )
    if terms:
        lines.append(f"Cut: {terms}")
    return tuple(lines)


def _margins(
    circuit: Circuit, result: CircuitResult | None, results: CalculationResults
) -> tuple[Margin, ...]:
    if result is None:
        return ()
    rating = circuit.device.rating_a
    found = [
        *margin("design current Ib, device In", result.design_current_a, "at most", rating, "A")
    ]
    for tag in circuit.cables:
        cable = results.cables.get(tag)
        if cable is not None:
            words = f"capacity Iz of {tag}, device In"
            found += margin(words, cable.checked_capacity_a, "at least", rating, "A")
    found += margin(
        "voltage drop to the worst point", result.drop_pct, "at most", result.drop_limit_pct, "%"
    )
    found += margin("loop impedance Zs", result.zs_ohm, "at most", result.zs_limit_ohm, "Ω")
    found += margin(
        "breaking capacity", circuit.device.icn_ka, "at least", result.fault_max_ka, "kA"
    )
    found += margin(
        "protective conductor, least under fault",
        result.cpc_has_mm2,
        "at least",
        result.cpc_needed_mm2,
        "mm²",
    )
    found += margin(
        "energy let through to the line, what it stands",
        result.line_energy_a2s,
        "at most",
        result.line_withstand_a2s,
        "A²s",
    )
    return tuple(found)
