"""The intake: supply, cut-out, meter and tails in one straight line; the earthing beside it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout import given_words as given
from asfitted.layout.lettering import BODY, TAG
from asfitted.layout.single_line import ink
from asfitted.layout.single_line.board_ink import SWITCH_TOP
from asfitted.layout.single_line.earth_rows import PROTECTIVE_X, SMALL_SIGN
from asfitted.layout.single_line.earthing import earthing_items, main_protective
from asfitted.layout.single_line.label import SWITCH_X
from asfitted.layout.single_line.parts import SUPPLY
from asfitted.layout.single_line.phrases import set_phrases
from asfitted.layout.single_line.room import PITCH, SIGN, STROKES
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.placing import PlacedSheet
    from asfitted.resolve.installation import Installation, Supply

WORDS_X = 7.0  # line to the words right of its signs
JOG_MM = 6.0  # room under the intake where its lines turn aside to a box that is not below them
EDGE_MM = 6.0  # right edge of a box to the nearest line that enters it from above


def intake_at(area: Box) -> Point:
    """Return the top of the incoming line on a sheet."""
    return Point(area.x0 + SWITCH_X, area.y0)


def board_intake_items(model: Model, sheet: PlacedSheet) -> list[Item]:
    """Return the intake at the top left of a sheet, down to the board that it feeds."""
    at = intake_at(sheet.fit.room.area)
    supply = model.installation.supply
    placed = next(p for p in sheet.parts if p.is_direct)
    board = model.installation.boards[placed.part.tag]
    end = sheet.levels.busbar if board.main_switch is None else placed.box.y0 + SWITCH_TOP
    items = head_items(model, at, sheet.fit.room.area.x1)
    items.append(ink.wire("supply:tails", SUPPLY, (at.x, at.y + signs_mm(supply)), (at.x, end)))
    if supply is None:
        return items
    earth = Point(at.x + PROTECTIVE_X, placed.box.y0 + 3.0 + SMALL_SIGN / 2)
    return [
        *items,
        main_protective(supply, at, (earth.x, earth.y - SMALL_SIGN / 2)),
        ink.sign(f"{board.tag}:earth", model, "protective_earth", earth, size_mm=SMALL_SIGN),
    ]


def box_intake_items(model: Model, area: Box, box: Box) -> list[Item]:
    """Return the intake at the top left of an overview, down to the top edge of a box."""
    at = intake_at(area)
    supply = model.installation.supply
    start = at.y + signs_mm(supply)
    items = head_items(model, at, area.x1)
    x = min(at.x, box.x1 - EDGE_MM)
    turn = box.y0 - JOG_MM / 2 + 1.0
    aside = [] if x == at.x else [(at.x, turn), (x, turn)]
    items.append(ink.wire("supply:tails", SUPPLY, (at.x, start), *aside, (x, box.y0)))
    if supply is None:
        return items
    x_earth, turn_earth = x + PROTECTIVE_X, turn - 4.0
    aside = [] if x == at.x else [(at.x + PROTECTIVE_X, turn_earth), (x_earth, turn_earth)]
    return [*items, main_protective(supply, at, *aside, (x_earth, box.y0))]


def signs_mm(supply: Supply | None) -> float:
    """Return the height of the signs of the line, which stand one on the other."""
    if supply is None:
        return 2 * SIGN
    return 3 * SIGN + (STROKES if supply.phases == 3 else 0.0)


def head_items(model: Model, at: Point, right: float) -> list[Item]:
    """Return signs and words of the intake from ``at`` down, the earthing left of them."""
    supply = model.installation.supply
    items = _line_items(model, supply, at, right - at.x - WORDS_X)
    return items if supply is None else items + earthing_items(supply, at, model)


def _line_items(model: Model, supply: Supply | None, at: Point, room: float) -> list[Item]:
    """Return terminal, cut-out fuse, meter and strokes from the top down, each with its words."""
    signs = ["terminal", "fuse", "meter_kwh"] if supply is not None else ["terminal", "meter_kwh"]
    says = {
        "terminal": set_phrases(_supply_phrases(model.installation), min(room, 80.0), BODY),
        "fuse": set_phrases(_cut_out_phrases(supply), room, BODY, join=" "),
        "meter_kwh": ["energy meter"],
    }
    items = ink.tags("supply:tag", ["Supply"], at.moved(WORDS_X, 0.0))
    top, free = at, at.y + TAG + 1.9
    for name in signs:
        items.append(ink.sign(f"supply:{name}", model, name, top.moved(dy=SIGN / 2)))
        lines = says[name]
        first = max(free, top.y + SIGN / 2 - len(lines) * PITCH / 2 + 0.6)
        first = free if name == "terminal" else first
        items += ink.words(f"supply:{name}:words", lines, Point(at.x + WORDS_X, first))
        free = first + len(lines) * PITCH
        top = top.moved(dy=SIGN)
    if supply is None:
        return items
    if supply.phases == 3:
        centre = top.moved(dy=STROKES / 2)
        items.append(ink.strokes("supply:strokes", model, centre, state=State.NEW))
    size = given.NOT_RECORDED if supply.tails_mm2 is None else f"{supply.tails_mm2:g} mm²"
    length = "" if supply.tails_m is None else f", L = {supply.tails_m:g} m"
    words_at = top.moved(WORDS_X, max(2.2, free - top.y))
    return items + ink.words("supply:tails:words", [f"tails {size}{length}"], words_at)


def _supply_phrases(installation: Installation) -> list[str]:
    supply = installation.supply
    if supply is None:
        return [given.NOT_RECORDED]
    volts = f"{supply.line_v:g}/{supply.u0_v:g}" if supply.phases == 3 else f"{supply.u0_v:g}"
    phases = "3N~" if supply.phases == 3 else "1N~"
    volts, hertz = (
        f"{figure} (a)" if given.how_given(installation, "supply", what) == "assumed" else figure
        for what, figure in (
            ("voltage", f"{volts} V"),
            ("frequency", f"{supply.frequency_hz:g} Hz"),
        )
    )
    return [
        f"{supply.system}, {phases} {volts} {hertz}",
        f"Ze {given.known(supply.ze_ohm, 'Ω')}",
        f"Ipf {given.known_fault(supply.ipf_ka, supply.phases)}",
    ]


def _cut_out_phrases(supply: Supply | None) -> list[str]:
    if supply is None or supply.cut_out is None:
        return [f"cut-out fuse {given.NOT_RECORDED}"]
    basis = f" ({supply.cut_out_basis[0]})" if supply.cut_out_basis else ""
    return ["cut-out fuse", f"{supply.cut_out.words}{basis}"]
