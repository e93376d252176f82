"""The working of a board, of a data device, of data equipment and of a run of containment."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.explain.circuit import way_lines
from asfitted.explain.explanation import Explanation, Part, cautions_of, margin

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults, DataResult
    from asfitted.check.run import CheckReport
    from asfitted.explain.explanation import Margin
    from asfitted.resolve.installation import Installation


def explain_board(
    tag: str, installation: Installation, results: CalculationResults, report: CheckReport
) -> Explanation:
    """Return the working of one board."""
    board, result = installation.boards[tag], results.boards.get(tag)
    symbols = ("I L1", "I L2", "I L3", "I", "IN")
    steps = result.steps if result else ()
    demand = tuple(step for step in steps if step.symbol in symbols)
    rest = tuple(step for step in steps if step.symbol not in symbols)
    parts = (Part("Fault level and loop impedance", rest), Part("Demand", demand))
    worst = (result.fault_max_3ph_ka or result.fault_max_1ph_ka) if result else None
    most = max(result.demand_a) if result else None
    switch = board.main_switch
    margins = (
        *margin("short-circuit rating", board.short_circuit_rating_ka, "at least", worst, "kA"),
        *margin("demand, rating of the board", most, "at most", board.rating_a, "A"),
        *margin(
            "demand, rating of the main switch",
            most,
            "at most",
            switch.rating_a if switch else None,
            "A",
        ),
    )
    facts = (
        ("State", str(board.state)),
        ("Fed from", board.fed_by),
        ("Main switch", switch.words if switch else "not recorded"),
        ("Ways", f"{result.ways_used} of {result.ways_total} used" if result else "not recorded"),
    )
    unknown = result.not_known if result else ("no figure of this board",)
    name = "" if board.name == tag else f": {board.name}"
    return _told(
        f"Board {tag}{name}",
        tag,
        facts=facts,
        parts=parts,
        margins=margins,
        unknown=unknown,
        report=report,
    )


def explain_data_device(
    tag: str, installation: Installation, results: CalculationResults, report: CheckReport
) -> Explanation:
    """Return the working of a camera, outlet or access point, or of data equipment."""
    device, result = installation.data_devices[tag], results.data.get(tag)
    parts = [
        Part(f"{one.what[0].upper()}{one.what[1:]}", one.steps)
        for one in results.equipment
        if one.tag == tag
    ]
    margins = [
        found
        for one in results.equipment
        if one.tag == tag
        for found in margin(f"{one.what} used", one.used, "at most", one.available, one.unit)
    ]
    facts = [("Kind", device.kind), ("State", str(device.state))]
    unknown: tuple[str, ...] = ()
    if result is not None:
        route = results.routes.get(result.cable)
        lines = way_lines(route) if route else ("no cable is given",)
        parts.append(Part(f"Cable {result.cable}: {result.medium}", lines=lines))
        parts.append(Part("Supply, signal and picture", result.steps))
        margins += _data_margins(result)
        facts += [("Supply", result.supply or "not recorded")]
        unknown = result.not_known
    heading = f"{device.kind[0].upper()}{device.kind[1:]} {tag}: {device.name}"
    told = tuple(part for part in parts if part.steps or part.lines)
    return _told(
        heading,
        tag,
        facts=tuple(facts),
        parts=told,
        margins=tuple(margins),
        unknown=unknown,
        report=report,
    )


def _data_margins(result: DataResult) -> tuple[Margin, ...]:
    window = result.window_v
    return (
        *margin(
            "length, limit of the signal", result.length_m, "at most", result.signal_limit_m, "m"
        ),
        *margin(
            "voltage at the device, least it works at",
            result.at_device_v,
            "at least",
            window[0] if window else None,
            "V",
        ),
        *margin(
            "supply voltage, most it stands",
            result.supply_v,
            "at most",
            window[1] if window else None,
            "V",
        ),
        *margin("load, power of its class", result.load_w, "at most", result.poe_class_w, "W"),
    )


def explain_run(
    tag: str, installation: Installation, results: CalculationResults, report: CheckReport
) -> Explanation:
    """Return the working of one run of containment."""
    run, result = installation.containment[tag], results.containment.get(tag)
    parts = (Part("Fill, mass and separation", result.steps if result else ()),)
    margins = (
        (
            *margin("fill of its fullest piece", result.fill_pct, "at most", result.limit_pct, "%"),
            *margin(
                f"separation from {result.separation_from}",
                result.separation_mm,
                "at least",
                result.separation_needed_mm,
                "mm",
            ),
        )
        if result
        else ()
    )
    facts = (
        ("State", str(run.state)),
        ("For", " and ".join(run.bands)),
        ("Fullest piece", (result.fullest if result else "") or "nothing runs in it"),
        ("Length", f"{result.length_m:.2f} m" if result else "not recorded"),
    )
    unknown = () if result else ("no figure of this run",)
    return _told(
        f"Run {tag}: {run.words}",
        tag,
        facts=facts,
        parts=parts,
        margins=margins,
        unknown=unknown,
        report=report,
    )


def _told(
    heading: str,
    tag: str,
    *,
    facts: tuple[tuple[str, str], ...],
    parts: tuple[Part, ...],
    margins: tuple[Margin, ...],
    unknown: tuple[str, ...],
    report: CheckReport,
) -> Explanation:
    findings = tuple(f for f in report.findings if f.subject == tag)
    return Explanation(tag, heading, facts, parts, margins, findings, unknown, cautions_of(parts))
