"""Which signs, lines and abbreviations a sheet uses: what its legend must explain."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from asfitted.layout.legend import LineSample
from asfitted.layout.linework import widths_for
from asfitted.layout.single_line import words as say
from asfitted.layout.single_line.parts import direct_board
from asfitted.layout.single_line.tree import FLAG
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.parts import Part
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
    signs |= {"fuse", "met"}
    if supply.bonds:
        signs.add("protective_earth")
    if supply.system == "TT":
        signs.add("earth_electrode")
    if supply.phases == 3:
        signs.add(STROKES_SIGN)
    return signs


def signs_used(model: Model, parts: Sequence[Part], *, has_intake: bool) -> tuple[str, ...]:
    """Return the signs that a sheet will use, sorted."""
    signs = intake_signs(model) if has_intake else set()
    direct = direct_board(model, parts, has_intake=has_intake)
    if has_intake and not direct:
        signs.add(FLAG)
    for part in parts:
        for column in part.columns:
            signs |= column_signs(model, column)
        board = model.installation.boards[part.tag]
        if part.number == 1 and board.main_switch is not None:
            signs.add(device_sign(board.main_switch.kind))
        if part.breaks or part.tag != direct:
            signs.add(FLAG)
    return tuple(sorted(signs))


def line_samples(model: Model, parts: Sequence[Part], *, has_intake: bool) -> list[LineSample]:
    """Return the kinds of line that a sheet uses."""
    widths = widths_for("A3")
    states = {
        model.installation.circuits[column.circuit].state
        for part in parts
        for column in part.columns
        if column.circuit
    }
    samples = []
    if State.NEW in states or has_intake:
        samples.append(LineSample("Cable or conductor", widths.wide))
    if State.EXISTING in states:
        samples.append(LineSample("Existing cable", widths.narrow))
    if State.REMOVED in states:
        samples.append(LineSample("Cable to be removed", widths.narrow, "dashed"))
    if parts or has_intake:
        samples.append(LineSample("Busbar", widths.extra_wide))
    if parts:
        samples.append(LineSample("Edge of an enclosure", widths.narrow, "long_dash_dot"))
    if has_intake and model.installation.supply is not None:
        samples.append(LineSample("Protective conductor", widths.symbol, "dashed"))
    return samples


def texts_used(model: Model, parts: Sequence[Part], *, has_intake: bool) -> list[str]:
    """Return every phrase of a sheet, for finding the abbreviations in them."""
    texts = ["RCD", "ADS", "Ib", "Iz", "Zs", "Ipf", "drop", "L"]  # the notes use these
    if has_intake:
        texts += ["MET", "Ze"]
    for part in parts:
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
