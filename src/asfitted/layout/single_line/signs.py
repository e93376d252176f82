"""Which signs, lines and abbreviations a sheet uses: what its legend must explain."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from asfitted.layout.legend import LineSample
from asfitted.layout.linework import widths_for
from asfitted.layout.single_line import words as say
from asfitted.layout.single_line.earth_rows import earth_rows
from asfitted.layout.single_line.parts import direct_board
from asfitted.layout.single_line.tree import FLAG
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.parts import Shown
    from asfitted.layout.single_line.tree import Column
    from asfitted.resolve.installation import Way

DEVICE_SIGNS = {
    "mcb": "circuit_breaker",
    "mccb": "circuit_breaker",
    "rcbo": "rcbo",
    "rcd": "rcd",
    "fuse": "fuse",
    "switch-disconnector": "switch_disconnector",
}
STROKES_SIGN = "strokes_3"
DOT = "junction_dot"

#: Every abbreviation the diagram may use; only those that stand on a sheet are explained there.
ABBREVIATIONS = (
    ("ADS", "automatic disconnection of supply"),
    ("SP", "single pole"),
    ("SP+N", "single pole and neutral"),
    ("DP", "double pole"),
    ("TP", "triple pole"),
    ("TP+N", "triple pole and neutral"),
    ("4P", "four pole"),
    ("MCCB", "moulded-case circuit-breaker"),
    ("RCBO", "circuit-breaker with RCD"),
    ("RCD", "residual current device"),
    ("AFDD", "arc fault detection device"),
    ("MET", "main earthing terminal"),
    ("SWA", "steel wire armoured"),
    ("XLPE", "cross-linked polyethylene, 90 °C"),
    ("PVC", "polyvinyl chloride, 70 °C"),
    ("LSF", "low smoke and fume"),
    ("T&E", "twin and earth"),
    ("c", "cores"),
    ("cpc", "circuit protective conductor"),
    ("L", "length"),
    ("Ib", "design current"),
    ("Iz", "current-carrying capacity as installed"),
    ("Zs", "earth fault loop impedance"),
    ("Ze", "the same outside the installation"),
    ("Ipf", "prospective fault current"),
    ("drop", "volt drop from the origin"),
)


def device_sign(kind: str) -> str:
    """Return the sign of a kind of device."""
    return DEVICE_SIGNS[kind]


def spare_sign(way: Way) -> str:
    """Return the sign of a device fitted in a spare way, or "" when none is fitted."""
    if "fitted" not in way.words:
        return ""
    return "rcbo" if "RCBO" in way.words.upper() else "circuit_breaker"


def column_signs(model: Model, column: Column) -> set[str]:
    """Return the signs of one column."""
    if column.kind == "blank":
        return set()
    if column.kind == "spare":
        return {sign for sign in [spare_sign(column.ways[0])] if sign}
    circuit = model.installation.circuits[column.circuit]
    signs = {device_sign(circuit.device.kind), *(stage.symbol for stage in column.stages)}
    if circuit.phase == "TP":
        signs.add(STROKES_SIGN)
    if any(not stage.runs_through for stage in column.stages[:-1]):
        signs.add(DOT)
    return signs


def intake_signs(model: Model) -> set[str]:
    """Return the signs of the intake."""
    supply = model.installation.supply
    signs = {"terminal", "meter_kwh"}
    if supply is None:
        return signs
    signs.add("fuse")
    signs |= {row.sign for row in earth_rows(supply)}
    if supply.phases == 3:
        signs.add(STROKES_SIGN)
    return signs


def signs_used(model: Model, shown: Shown) -> tuple[str, ...]:
    """Return the signs that a legend must explain, sorted."""
    signs = intake_signs(model) if shown.has_intake or shown.has_overview else set()
    direct = direct_board(model, shown.parts, has_intake=shown.has_intake)
    if shown.has_overview:
        signs.add(FLAG)
    if direct and model.installation.supply is not None:
        signs.add("protective_earth")
    for part in shown.parts:
        for column in part.columns:
            signs |= column_signs(model, column)
        board = model.installation.boards[part.tag]
        if part.number == 1 and board.main_switch is not None:
            signs.add(device_sign(board.main_switch.kind))
        if part.breaks or part.tag != direct:
            signs.add(FLAG)
    return tuple(sorted(signs))


def states_shown(model: Model, shown: Shown) -> set[State]:
    """Return the states of the lines: of circuits, and on an overview of boards."""
    circuits = model.installation.circuits
    found = {circuits[c.circuit].state for part in shown.parts for c in part.columns if c.circuit}
    if shown.has_overview:
        found |= {board.state for board in model.installation.boards.values()}
    return found


def line_samples(model: Model, shown: Shown) -> list[LineSample]:
    """Return the kinds of line that a legend must explain."""
    widths = widths_for("A3")
    states = states_shown(model, shown)
    has_intake = shown.has_intake or shown.has_overview
    earthed = has_intake and model.installation.supply is not None
    samples = []
    if State.NEW in states or has_intake:
        samples.append(LineSample("Cable or conductor, new", widths.wide))
    if State.EXISTING in states:
        samples.append(LineSample("Existing", widths.narrow))
    if State.REMOVED in states:
        words = "To be removed: signs struck through, boards hatched"
        samples.append(LineSample(words, widths.narrow, "dotted"))
    if shown.parts or earthed:
        samples.append(LineSample("Busbar, earth bar", widths.extra_wide))
    if shown.parts:
        samples.append(LineSample("Edge of an enclosure", widths.narrow, "long_dash_dot"))
    if earthed:
        samples.append(LineSample("Protective conductor", widths.symbol, "dashed"))
    return samples


def texts_used(model: Model, shown: Shown) -> list[str]:
    """Return every phrase that a legend must explain, for finding the abbreviations in them."""
    texts = ["RCD", "ADS", "Ib", "Iz", "Zs", "Ipf", "drop", "L"]  # the notes use these
    if shown.has_intake or shown.has_overview:
        texts += ["MET", "Ze"]
    for part in shown.parts:
        board = model.installation.boards[part.tag]
        texts += [t for group in say.board_phrases(model, board) for t in group]
        texts += [board.main_switch.words, board.main_switch.poles] if board.main_switch else []
        for column in part.words:
            texts += column.device
            texts += [t for stage in column.stages for t in (*stage.leg, *stage.points)]
    return texts


def abbreviations_in(texts: Iterable[str]) -> list[tuple[str, str]]:
    """Return the abbreviations that stand in some texts, each with its words."""
    words: set[str] = set()
    for text in texts:
        words.update(re.split(r"[\s/,=()]+", text))
        words.update("c" for _ in re.finditer(r"\b\d+c\b", text))
        words.update(part for part in ("SP+N", "TP+N") if part in text)
        words.update("Ib" for _ in re.finditer(r"\bIb\b", text))
    return [(short, long) for short, long in ABBREVIATIONS if short in words]
