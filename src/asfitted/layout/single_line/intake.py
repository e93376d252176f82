"""The intake: supply, cut-out, meter and tails in one straight line; the earthing beside it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout import given_words as given
from asfitted.layout.frame import usable_box
from asfitted.layout.lettering import BODY, TAG
from asfitted.layout.linework import polyline
from asfitted.layout.sheet_layout import Item
from asfitted.layout.single_line import ink
from asfitted.layout.single_line.board_ink import SWITCH_TOP
from asfitted.layout.single_line.label import SWITCH_X
from asfitted.layout.single_line.parts import SUPPLY
from asfitted.layout.single_line.phrases import set_phrases
from asfitted.layout.single_line.placing import FLAG_STEP, FLAGS_Y
from asfitted.layout.single_line.room import PITCH, SIGN, STROKES
from asfitted.layout.single_line.words import flag_words
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.layout.single_line.placing import PlacedDiagram, PlacedSheet
    from asfitted.resolve.installation import Supply

WORDS_X = 7.0  # line to the words right of its signs
MET_X, MET_Y = -34.0, 9.0  # top middle of the main earthing terminal, from the top of the line
BOND_X = -18.0  # main earthing terminal to the sign of its bonds
BAR_Y = 5.0  # top of the box of the main earthing terminal to the middle of its bar


def intake_items(
    model: Model, sheet: PlacedSheet, diagram: PlacedDiagram, numbers: Numbers
) -> list[Item]:
    """Return the intake at the top left of a sheet, down to the board or flags it feeds."""
    area = usable_box("A3")
    at = Point(area.x0 + SWITCH_X, area.y0)
    supply = model.installation.supply
    items = _line_items(model, supply, at)
    if supply is not None:
        items += _earthing_items(model, supply, at)
    end_of_signs = at.y + _signs_mm(supply)
    direct = next((p for p in sheet.parts if p.is_direct), None)
    if direct is not None:
        board = model.installation.boards[direct.part.tag]
        end = sheet.levels.busbar if board.main_switch is None else direct.box.y0 + SWITCH_TOP
        items.append(ink.wire("supply:tails", SUPPLY, (at.x, end_of_signs), (at.x, end)))
        return items
    return items + _flag_items(sheet, at.x, end_of_signs, diagram, numbers)


def _signs_mm(supply: Supply | None) -> float:
    """Return the height of the signs of the line, which stand one on the other."""
    if supply is None:
        return 2 * SIGN
    return 3 * SIGN + (STROKES if supply.phases == 3 else 0.0)


def _line_items(model: Model, supply: Supply | None, at: Point) -> list[Item]:
    """Return terminal, cut-out fuse, meter and strokes from the top down, each with its words."""
    signs = ["terminal", "fuse", "meter_kwh"] if supply is not None else ["terminal", "meter_kwh"]
    says = {
        "terminal": _supply_lines(supply),
        "fuse": _cut_out_lines(supply),
        "meter_kwh": ["energy meter"],
    }
    items = ink.tags("supply:tag", ["Supply"], at.moved(WORDS_X, 0.0))
    top = at
    for name in signs:
        items.append(ink.sign(f"supply:{name}", model, name, top.moved(dy=SIGN / 2)))
        lines = says[name]
        first = TAG + 1.9 if name == "terminal" else SIGN / 2 - len(lines) * PITCH / 2 + 0.6
        items += ink.words(f"supply:{name}:words", lines, top.moved(WORDS_X, first))
        top = top.moved(dy=SIGN)
    if supply is None:
        return items
    if supply.phases == 3:
        centre = top.moved(dy=STROKES / 2)
        items.append(ink.strokes("supply:strokes", model, centre, state=State.NEW))
    size = given.NOT_RECORDED if supply.tails_mm2 is None else f"{supply.tails_mm2:g} mm²"
    length = "" if supply.tails_m is None else f", L = {supply.tails_m:g} m"
    words_at = top.moved(WORDS_X, 2.2)
    return items + ink.words("supply:tails:words", [f"tails {size}{length}"], words_at)


def _supply_lines(supply: Supply | None) -> list[str]:
    if supply is None:
        return [given.NOT_RECORDED]
    volts = f"{supply.line_v:g}/{supply.u0_v:g}" if supply.phases == 3 else f"{supply.u0_v:g}"
    phases = "3N~" if supply.phases == 3 else "1N~"
    return [
        f"{supply.system}, {phases} {volts} V {supply.frequency_hz:g} Hz",
        f"Ze {given.known(supply.ze_ohm, 'Ω')}, Ipf {given.known(supply.ipf_ka, 'kA')}",
    ]


def _cut_out_lines(supply: Supply | None) -> list[str]:
    if supply is None or supply.cut_out is None:
        return [f"cut-out fuse {given.NOT_RECORDED}"]
    basis = f" ({supply.cut_out_basis[0]})" if supply.cut_out_basis else ""
    return [f"cut-out fuse {supply.cut_out.words}{basis}"]


def _earthing_items(model: Model, supply: Supply, at: Point) -> list[Item]:
    """Return the main earthing terminal left of the line, its conductor, bonds and words."""
    x, top = at.x + MET_X, at.y + MET_Y
    bar = top + BAR_Y
    items = [ink.sign("met", model, "met", Point(x, top + SIGN / 2))]
    supply_y = at.y + SIGN / 2
    if supply.system != "TT":
        ends = (at.x - 0.8, supply_y), (x, supply_y), (x, top)
        items.append(_protective("earthing-conductor", *ends))
    if supply.bonds or supply.system == "TT":
        name = "earth_electrode" if supply.system == "TT" else "protective_earth"
        centre = Point(x + BOND_X, bar)
        items.append(ink.sign(f"met:{name}", model, name, centre, turn=90))
        items.append(_protective("met:bonds", (x - 4.5, bar), (centre.x + SIGN / 2, bar)))
    items += ink.tags("met:tag", ["MET"], Point(x + WORDS_X, bar - TAG / 2))
    left = usable_box("A3").x0
    lines = set_phrases(
        _earthing_phrases(supply),
        at.x - left - 8.0,
        BODY,
    )
    return items + ink.words("met:words", lines, Point(left, top + SIGN + 1.0))


def _earthing_phrases(supply: Supply) -> list[str]:
    conductor = supply.earthing_conductor_mm2
    size = given.NOT_RECORDED if conductor is None else f"{conductor:g} mm²"
    phrases = [f"earthing conductor {size}"]
    if supply.system == "TT":
        phrases.append(f"earth electrode {given.known(supply.electrode_ohm, 'Ω')}")
    bonds = [f"{what} {mm2:g} mm²" for what, mm2 in supply.bonds]
    if not bonds:
        return [*phrases, f"main bonds {given.NOT_RECORDED}"]
    return [*phrases, f"main bonds: {bonds[0]}", *bonds[1:]]


def _protective(ident: str, *points: tuple[float, float]) -> Item:
    line = polyline(*points, width_mm=ink.WIDTHS.symbol, pattern="dashed")
    return Item(ident, "wire", (line,), net="PE", title="protective conductor")


def _flag_items(
    sheet: PlacedSheet, x: float, start: float, diagram: PlacedDiagram, numbers: Numbers
) -> list[Item]:
    """Return an upright bar from which boards of other sheets are fed through flags."""
    flags = {name: p for name, p in sheet.flags.items() if name.startswith("to:")}
    if not flags:
        return []
    top = usable_box("A3").y0 + FLAGS_Y - 6.0
    bottom = top + 12.0 + (len(flags) - 1) * FLAG_STEP
    bar = polyline((x, top), (x, bottom), width_mm=ink.WIDTHS.extra_wide)
    items = [
        ink.wire("supply:tails", SUPPLY, (x, start), (x, top)),
        Item("supply:bar", "busbar", (bar,), net=SUPPLY, title="supply to boards"),
    ]
    for name, at in flags.items():
        tag = name.removeprefix("to:")
        twin = diagram.where(f"from:{tag}", numbers)
        said = ", ".join(flag_words("to", *twin)) if twin else "not drawn"
        link = f"{twin[0]}#from:{tag}" if twin else ""
        items += [
            ink.wire(f"supply:to:{tag}", SUPPLY, (x, at.y), (at.x - SIGN / 2, at.y)),
            ink.flag(name, at, ink.FLAG_JOINED_LEFT, link),
            *ink.tags(f"{name}:tag", [tag], at.moved(SIGN / 2 + 1.5, -TAG - 0.6)),
            *ink.words(f"{name}:words", [said], at.moved(SIGN / 2 + 1.5, 0.8)),
        ]
    return items
