"""The working of the circuits in few words, as rows of the calculation sheets.

Rows are (symbol, words, numbers, value, number of the source). What the symbols mean, their
formulae and the sources stand once on the key sheets, so that a row is one line.
"""

from __future__ import annotations

import re
import textwrap
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from asfitted.calculate.cable_rating import FREE_AIR, method_words
from asfitted.calculate.network import fault_of_ipf
from asfitted.explain.numbers import value_words
from asfitted.explain.refused_sizes import refused_words

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.calculate.results import CableResult, CalculationResults, CircuitResult, SizeTried
    from asfitted.calculate.working import Step
    from asfitted.resolve.installation import Circuit, Installation

Row = tuple[str, str, str, str, str]
PROBLEM = "?"
NONE = "–"
ONE_LINE_SIGNS, NEXT_LINE_SIGNS = 39, 33  # longer numbers stand on two even lines
LIMIT = "Zs max"  # the row that tells its table in words, for whoever compares a reading with it
_HOW_KNOWN = re.compile(r"\s*\((?:seen|memory|derived|common practice)[^()]*\)")
#: Symbol, what it is, and its formula: the key printed once.
KEY = (
    ("Ib", "design current", "from the loads as given; power factor given, else the usual one"),
    ("In", "rating of the device", "at least Ib"),
    ("It", "tabulated capacity of the size, method and loaded conductors", "from the table"),
    ("Ca, Cg, Cd, Cc", "factors: temperature, grouping, depth, device or burial", "from tables"),
    ("Iz", "capacity in the part of its way that governs", "It × factors, at least In"),
    ("Vd", "voltage drop of this cable alone", "(mV/A/m) × cos φ × I × L / 1000"),
    ("R1+R2", "line and protective conductor, hot", "(r1 × factor + r2 × factor) × L / 1000"),
    ("Zs", "loop impedance at the far end of the cable", "Zs before it + (R1 + R2)"),
    ("Vd max", "drop from the origin to the worst point", "drop at the board + drop from it"),
    (
        "Zs max",
        "greatest Zs for the device in its time; cold: on a test",
        "Cmin × U0 / Ia",
    ),
    ("If min", "least earth-fault current, at the far end", "Cmin × U0 / Zs"),
    ("Ik max", "greatest fault current, at the board", "Cmax × U0 / |Z|"),
    ("S cpc, S line", "least conductor under fault", "√(I²t) / k"),
    (PROBLEM, "what is not known", "not checked, never taken as a pass"),
)


@dataclass(frozen=True)
class Block:
    """The rows of one circuit; the first is its heading, repeated where a page is turned."""

    tag: str
    rows: tuple[Row, ...]

    @property
    def continued(self) -> Row:
        """The heading on the next page."""
        tag, name, device, value, source = self.rows[0]
        return (tag, f"{name}, continued", device, value, source)


@dataclass
class Sources:
    """Sources by number, in the order in which they were first named."""

    numbers: dict[str, int] = field(default_factory=dict)

    def number(self, source: str) -> str:
        """Return the number of a source as printed."""
        return str(self.numbers.setdefault(source, len(self.numbers) + 1))


def circuit_blocks(
    installation: Installation, results: CalculationResults
) -> tuple[tuple[Block, ...], tuple[tuple[str, str], ...]]:
    """Return the rows of every surveyed circuit that stays, and the numbered sources."""
    sources, blocks = Sources(), []
    for tag, circuit in installation.circuits.items():
        result = results.circuits.get(tag)
        if result is None or not circuit.cables or circuit.state == "removed":
            continue
        blocks.append(Block(tag, tuple(_rows(circuit, result, results, sources))))
    listed = tuple((str(number), source) for source, number in sources.numbers.items())
    return tuple(blocks), listed


def _rows(
    circuit: Circuit, result: CircuitResult, results: CalculationResults, sources: Sources
) -> Iterator[Row]:
    yield (circuit.tag, circuit.name, circuit.device.words, "", "")
    steps = {step.symbol: step for step in result.steps}
    if result.design_current_a is not None and "Ib" in steps:
        words = f"design current; In {circuit.device.rating_a:g} A"
        yield _row(steps["Ib"], words, sources)
    told = set[Row]()
    chosen: dict[tuple[SizeTried, ...], str] = {}  # cables of one build, sized together
    for tag in circuit.cables:
        cable = results.cables.get(tag)
        if cable is None:
            yield (tag, "this cable could not be sized", NONE, "not known", NONE)
            continue
        yield _cable_row(cable, results, chosen)
        for row in _cable_steps(cable, result, sources):
            if row not in told:
                told.add(row)
                yield row
    for symbol, words in _closing_words(circuit, result).items():
        if symbol in steps:
            yield _row(steps[symbol], words, sources)
    for reason in result.not_known:
        if (PROBLEM, reason, "not checked", NONE, "") not in told:
            yield (PROBLEM, reason, "not checked", NONE, "")


def _drop_limit(result: CircuitResult) -> str:
    limit = result.drop_limit_pct
    return f"{limit:g} %" if limit is not None else "not known"


def _closing_words(circuit: Circuit, result: CircuitResult) -> dict[str, str]:
    """Return words for the closing steps of a circuit, limits with the figures they bound.

    Where one cable stands alone its own drop is that of the circuit and is not told again.
    """
    alone = len(circuit.cables) == 1
    time = f"{result.disconnection_limit_s:g} s" if result.disconnection_limit_s else "no time"
    reading = result.zs_limit_measured_ohm
    cold = f"; cold {value_words(reading, 'Ω')}" if reading is not None else ""
    has = f"has {result.cpc_has_mm2:g} mm²" if result.cpc_has_mm2 is not None else "not known"
    has += "" if alone or not result.cpc_checked else f" in {result.cpc_checked}"
    line = result.line_checked.partition(" in ")[0] if alone else result.line_checked
    worst = {"Vd max": f"drop to {result.worst_point}; limit {_drop_limit(result)}"}
    return {
        **({} if alone else worst),
        "Zs max": f"limit in {time}{cold}",
        "If min": "least earth fault",
        "Ik max": f"greatest, {fault_of_ipf(3 if circuit.phase == 'TP' else 1)}",
        "S cpc": f"cpc: {has}",
        "S line": f"line: has {line}",
    }


def _cable_row(
    cable: CableResult, results: CalculationResults, chosen: dict[tuple[SizeTried, ...], str]
) -> Row:
    route = results.routes.get(cable.tag)
    size = "size given"
    if cable.size_chosen:
        size = "least size made"
        if refused := refused_words(cable.tried):
            size = f"chosen; {refused}"
            first = chosen.setdefault(cable.tried, cable.tag)
            size = size if first == cable.tag else f"chosen with {first}"
    length = value_words(route.length_m, "m") if route else "not known"
    return (cable.tag, cable.words, size, length, NONE)


def _cable_steps(cable: CableResult, result: CircuitResult, sources: Sources) -> Iterator[Row]:
    """Yield the steps of a cable; Zs only where it is the greatest of the circuit."""
    steps = {step.symbol: step for step in cable.steps}
    names = " × ".join(factor.symbol for factor in cable.factors)
    words = {
        "It": method_words(cable.method),
        "Iz": f"It × {names}; group of {cable.group_count}",
        "Vd": f"{cable.drop_to_end_pct:.2f} % at end; limit {_drop_limit(result)}",
        "R1+R2": f"cpc {cable.cpc_words.replace('steel armour', 'armour')}",
    }
    if cable.zs_end_ohm == result.zs_ohm:
        words["Zs"] = "at its far end"
    for symbol, told in words.items():
        if symbol in steps and symbol == "Iz" and cable.capacity_doubt:
            yield _not_as_laid(steps[symbol], told, sources)
        elif symbol in steps:
            yield _row(steps[symbol], told, sources)
    for reason in cable.not_known:
        if reason == cable.capacity_doubt:
            continue  # told with its Iz
        yield (PROBLEM, reason, "not checked", NONE, "")


def _not_as_laid(step: Step, words: str, sources: Sources) -> Row:
    """Return the row of a capacity that no table gives as the cable lies: its value is "?"."""
    symbol, _, numbers, value, source = _row(step, words, sources)
    return (
        symbol,
        "as laid: not checked",
        f"{numbers} = {value} in {FREE_AIR}",
        PROBLEM,
        source,
    )


def _row(step: Step, words: str, sources: Sources) -> Row:
    value = value_words(step.value, step.unit)
    numbers = step.substituted or NONE
    if len(numbers) > ONE_LINE_SIGNS:
        numbers = "\n".join(textwrap.wrap(numbers, NEXT_LINE_SIGNS))
    if step.symbol == LIMIT:
        numbers = "\n".join((numbers, *_table_words(step)))
    return (step.symbol, words, numbers, value, sources.number(step.source))


def _table_words(step: Step) -> list[str]:
    """Return tables and standards of a limit, without its formula and how the figure is known."""
    words = _HOW_KNOWN.sub("", step.source).replace("BS 7671 Appendix 3 Figs", "BS 7671 Figs")
    return [part.strip() for part in words.split("; ") if not part.startswith("Cmin")]
