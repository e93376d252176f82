"""An enclosure with its corner label, main switch, busbar and cut ends, and the feed above it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.layout.lettering import BODY
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.sheet_layout import Item, Text
from asfitted.layout.single_line import ink
from asfitted.layout.single_line.label import LABEL_PAD, heading_lines, label_lines, label_width_mm
from asfitted.layout.single_line.parts import SUPPLY
from asfitted.layout.single_line.phrases import set_phrases, width_mm
from asfitted.layout.single_line.room import FLAG_ROW, PITCH, SIGN
from asfitted.layout.single_line.signs import device_sign
from asfitted.layout.single_line.words import flag_words, switch_phrases

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.layout.single_line.placing import Levels, PlacedDiagram, PlacedPart
    from asfitted.resolve.installation import Board, State

SWITCH_TOP = 3.0  # top edge of the enclosure to the main switch
BUS_INSET = 4.0
CUT_INSET = 13.0  # edge of the enclosure to the cut end of a busbar: the flag stands between


def board_items(
    model: Model, placed: PlacedPart, levels: Levels, diagram: PlacedDiagram, numbers: Numbers
) -> list[Item]:
    """Return the enclosure of a board with all but its ways."""
    board = model.installation.boards[placed.part.tag]
    items = [_edge(placed), *_label_items(model, placed), _busbar(board, placed, levels)]
    if placed.part.number == 1:
        items += _incoming_items(model, board, placed, levels)
        if not placed.is_direct:
            items += _feed_items(model, board, placed, diagram, numbers)
    return items + _cut_items(placed, levels, diagram, numbers)


def _edge(placed: PlacedPart) -> Item:
    width = ink.WIDTHS.narrow
    edge = rectangle(placed.box, width_mm=width, pattern="long_dash_dot")
    return Item(f"{placed.part.tag}:enclosure", "outline", (edge,), title=placed.part.tag)


def _label_items(model: Model, placed: PlacedPart) -> list[Item]:
    part = placed.part
    at = Point(placed.box.x0 + LABEL_PAD, placed.box.y0 + LABEL_PAD)
    room = label_width_mm(placed.box.width, part.number, is_direct=placed.is_direct)
    heading = heading_lines(model, part, room)
    items = ink.tags(f"{part.tag}:label", heading, at)
    under = at.moved(dy=ink.tag_block_mm(heading) - 0.4)
    return items + ink.words(f"{part.tag}:label:facts", label_lines(model, part.tag, room), under)


def _busbar(board: Board, placed: PlacedPart, levels: Levels) -> Item:
    part, box = placed.part, placed.box
    x0 = box.x0 + (CUT_INSET if part.number > 1 else BUS_INSET)
    x1 = box.x1 - (CUT_INSET if part.number < part.count else BUS_INSET)
    bar = polyline((x0, levels.busbar), (x1, levels.busbar), width_mm=ink.WIDTHS.extra_wide)
    return Item(f"{part.tag}:busbar", "busbar", (bar,), net=board.tag, title=f"{board.tag} busbar")


def _incoming_items(model: Model, board: Board, placed: PlacedPart, levels: Levels) -> list[Item]:
    """Return the main switch with its words, and the lines above and below it."""
    x, tag = placed.switch_x, board.tag
    above = placed.box.y0 + (SWITCH_TOP if board.main_switch else 0.0)
    state = board.state
    net = board.fed_by if not placed.is_direct else SUPPLY
    items: list[Item] = []
    if not placed.is_direct:
        start = placed.box.y0 - FLAG_ROW + SIGN
        end = above if board.main_switch else levels.busbar
        items.append(
            ink.wire(f"{tag}:incoming", net, (x, start), (x, end), state=_feed_state(model, board))
        )
    room = placed.box.x1 - x - 4.0
    if board.main_switch is None:
        lines = set_phrases(["main switch", NOT_RECORDED], room, BODY, join=" ")
        return items + ink.words(f"{tag}:switch:words", lines, Point(x + 3.0, above + 3.0))
    centre = Point(x, above + SIGN / 2)
    name = device_sign(board.main_switch.kind)
    items.append(ink.sign(f"{tag}:switch", model, name, centre, state=state))
    items.append(ink.wire(f"{tag}:main", tag, (x, above + SIGN), (x, levels.busbar), state=state))
    said = ["main switch", *switch_phrases(board.main_switch)]
    lines = set_phrases(said, room, BODY, join=" ")
    return items + ink.words(f"{tag}:switch:words", lines, Point(x + 3.0, above + 1.0))


def _feed_state(model: Model, board: Board) -> State:
    circuit = model.installation.circuits.get(board.fed_by)
    return board.state if circuit is None else circuit.state


def _feed_items(
    model: Model, board: Board, placed: PlacedPart, diagram: PlacedDiagram, numbers: Numbers
) -> list[Item]:
    """Return the flag above a board that names where its feed comes from."""
    tag = board.tag
    centre = Point(placed.switch_x, placed.box.y0 - FLAG_ROW + SIGN / 2)
    twin = diagram.where(f"to:{tag}", numbers)
    link = f"{twin[0]}#to:{tag}" if twin else ""
    origin = "the supply" if board.fed_by == SUPPLY else board.fed_by
    lines = [f"from {origin}"]
    if twin:
        lines.append(", ".join(flag_words("on", *twin)))
    circuit = model.installation.circuits.get(board.fed_by)
    if circuit is not None and circuit.cables:
        lines.append(f"cable {', '.join(circuit.cables)}")
    at = Point(placed.switch_x + SIGN / 2, centre.y - SIGN / 2)
    return [
        ink.flag(f"from:{tag}", centre, ink.FLAG_JOINED_BELOW, link),
        *ink.words(f"from:{tag}:words", lines, at),
    ]


def _cut_items(
    placed: PlacedPart, levels: Levels, diagram: PlacedDiagram, numbers: Numbers
) -> list[Item]:
    """Return the flags at the ends of a busbar that goes on on another sheet."""
    part, box, y = placed.part, placed.box, levels.busbar
    items: list[Item] = []
    if part.number > 1:
        mine, other = (f"{way}:{part.tag}/{part.number}" for way in ("back", "on"))
        centre = Point(box.x0 + CUT_INSET - SIGN / 2, y)
        twin = diagram.where(other, numbers)
        items += _cut_end(mine, other, centre, twin, ink.FLAG_JOINED_RIGHT)
    if part.number < part.count:
        mine, other = (f"{way}:{part.tag}/{part.number + 1}" for way in ("on", "back"))
        centre = Point(box.x1 - CUT_INSET + SIGN / 2, y)
        twin = diagram.where(other, numbers)
        items += _cut_end(mine, other, centre, twin, ink.FLAG_JOINED_LEFT)
    return items


def _cut_end(
    ident: str, other: str, centre: Point, twin: tuple[str, str] | None, turn: ink.Turn
) -> list[Item]:
    """Return one flag with the sheet and zone of its twin in turned words under it."""
    lines = ["busbar", *((f"sheet {twin[0]}", f"zone {twin[1]}") if twin else ("not drawn",))]
    link = f"{twin[0]}#{other}" if twin else ""
    longest = max(width_mm(line, BODY) for line in lines)
    foot = centre.y + SIGN / 2 + longest
    x = centre.x - 1.5 * PITCH + 1.05 * BODY
    texts = tuple(
        Text(Point(x + i * PITCH, foot), line, BODY, turned=True) for i, line in enumerate(lines)
    )
    return [ink.flag(ident, centre, turn, link), Item(f"{ident}:words", "text", texts)]
