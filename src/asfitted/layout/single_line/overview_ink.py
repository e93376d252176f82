"""The ink of the distribution overview: boxes, feeds with their protective conductors, flags."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.lettering import BODY
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.sheet_layout import Item
from asfitted.layout.single_line import ink
from asfitted.layout.single_line.overview_parts import BAND_MM, CUT_X, FLAG_MM, PAD
from asfitted.layout.single_line.parts import SUPPLY
from asfitted.layout.single_line.phrases import set_phrases
from asfitted.layout.single_line.room import PITCH, SIGN
from asfitted.layout.single_line.words import flag_words
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.layout.single_line.overview_parts import (
        PlacedBox,
        PlacedFeed,
        PlacedOverview,
        PlacedSpine,
    )
    from asfitted.layout.single_line.placing import PlacedDiagram

HATCH_MM = 4.0


def overview_items(
    model: Model, page: PlacedOverview, diagram: PlacedDiagram, numbers: Numbers
) -> list[Item]:
    """Return everything of one sheet but the intake, notes and legend."""
    items: list[Item] = []
    for box in page.boxes:
        items += _box_items(model, box)
        items += _ways_flag(page, box, diagram, numbers)
        items += _cut_flags(page, box, diagram, numbers)
    items += [_spine_item(model, spine) for spine in page.spines]
    for feed in page.feeds:
        items += _feed_items(model, feed)
        items += _stub_flag(model, page, feed, diagram, numbers)
    return items


def _spine_item(model: Model, spine: PlacedSpine) -> Item:
    """Return the part of a board that goes down past all it feeds."""
    board = model.installation.boards.get(spine.tag)
    state = State.NEW if board is None else board.state
    edge = rectangle(spine.box, width_mm=ink.line_of(state)[0])
    return Item(f"board:{spine.tag}:spine", "symbol", (edge,), title=spine.tag)


def _stub_flag(
    model: Model,
    page: PlacedOverview,
    feed: PlacedFeed,
    diagram: PlacedDiagram,
    numbers: Numbers,
) -> list[Item]:
    """Return the flag at the end of a feed whose board stands in another column or sheet."""
    name, back = f"on:overview/{feed.child}/1", f"back:overview/{feed.child}/1"
    if name not in page.flags:
        return []
    twin = diagram.where(back, numbers)
    circuit = model.installation.circuits.get(model.installation.boards[feed.child].fed_by)
    way = f" from way {circuit.way}" if circuit else ""
    said = f"{feed.child}{way}: " + (f"sheet {twin[0]}, zone {twin[1]}" if twin else "not drawn")
    return _small_flag(name, page.flags[name], f"{twin[0]}#{back}" if twin else "", [said])


def _box_items(model: Model, placed: PlacedBox) -> list[Item]:
    """Return the edge of a box and its words; a board that goes has a hatched band."""
    board = model.installation.boards.get(placed.tag)
    state = State.NEW if board is None else board.state
    ident = f"board:{placed.tag}" + (f":part-{placed.part}" if placed.part > 1 else "")
    edge = rectangle(placed.box, width_mm=ink.line_of(state)[0])
    items = [Item(ident, "symbol", (edge,), title=placed.tag)]
    at = Point(placed.box.x0 + PAD, placed.box.y0 + PAD)
    if state is State.REMOVED:
        items.append(_hatched(ident, placed))
        at = at.moved(dx=BAND_MM)
    items += ink.tags(f"{ident}:heading", placed.heading, at)
    under = at.moved(dy=ink.tag_block_mm(placed.heading) - 0.4)
    return items + ink.words(f"{ident}:facts", placed.lines, under)


def _hatched(ident: str, placed: PlacedBox) -> Item:
    """Return oblique strokes down the left edge of a box."""
    box, strokes = placed.box, []
    y = box.y0 + HATCH_MM
    while y <= box.y1:
        ends = (box.x0, y), (box.x0 + BAND_MM - 0.5, y - BAND_MM + 0.5)
        strokes.append(polyline(*ends, width_mm=ink.WIDTHS.narrow))
        y += HATCH_MM
    return Item(f"{ident}:removed", "outline", tuple(strokes), title="removed")


def _ways_flag(
    page: PlacedOverview, placed: PlacedBox, diagram: PlacedDiagram, numbers: Numbers
) -> list[Item]:
    """Return the flag of a board with the sheets that show its ways."""
    name = next((n for n in (f"to:{placed.tag}", f"ways:{placed.tag}") if n in page.flags), "")
    if not name or placed.part > 1:
        return []
    sheets = diagram.sheets_of(placed.tag)
    twin = diagram.where(f"from:{placed.tag}", numbers)
    link = f"{twin[0]}#from:{placed.tag}" if twin else ""
    said = f"ways: sheet {twin[0]}, zone {twin[1]}" if twin else "ways not drawn"
    if len(sheets) > 1 and twin:
        said = f"ways: sheets {twin[0]}, zone {twin[1]}, to {numbers.of(sheets[-1].key)}"
    if page.is_outline and twin:
        said = f"sheet {'/'.join(twin)}"
        if len(sheets) > 1:
            said = f"sheets {'/'.join(twin)} to {numbers.of(sheets[-1].key)}"
    return _small_flag(name, page.flags[name], link, [said])


def _small_flag(name: str, at: Point, link: str, lines: list[str]) -> list[Item]:
    flag = ink.flag(name, at, ink.FLAG_JOINED_LEFT, link, size_mm=FLAG_MM)
    return [flag, *ink.words(f"{name}:words", lines, at.moved(FLAG_MM / 2 + 1.5, -BODY / 2))]


def _cut_flags(
    page: PlacedOverview, placed: PlacedBox, diagram: PlacedDiagram, numbers: Numbers
) -> list[Item]:
    """Return the flags of a box that goes on, or that comes from another sheet."""
    tag, part = placed.tag, placed.part
    items: list[Item] = []
    room = placed.box.width - CUT_X - SIGN / 2 - 1.5
    back = f"back:overview/{tag}/{part}"
    if back in page.flags:
        twin = diagram.where(f"on:overview/{tag}/{part}", numbers)
        items += _cut_flag(back, page.flags[back], ("from", tag, twin), room)
    on = f"on:overview/{tag}/{2 if placed.beyond else part + 1}"
    if placed.beyond and part == 1:
        twin = diagram.where(f"back:overview/{tag}/2", numbers)
        link = f"{twin[0]}#back:overview/{tag}/2" if twin else ""
        said = ", ".join(flag_words("feeds: on", *twin)) if twin else "not drawn"
        items += _small_flag(on, page.flags[on], link, [said])
    elif placed.goes_on:
        twin = diagram.where(f"back:overview/{tag}/{part + 1}", numbers)
        items += _cut_flag(on, page.flags[on], ("on", tag, twin), room)
    return items


def _cut_flag(
    name: str, at: Point, towards: tuple[str, str, tuple[str, str] | None], room: float
) -> list[Item]:
    """Return a flag below or above a box with the sheet and zone of its twin."""
    way, tag, twin = towards
    is_on = way == "on"
    other = name.replace("on:", "back:", 1) if is_on else name.replace("back:", "on:", 1)
    link = f"{twin[0]}#{other}" if twin else ""
    if tag == SUPPLY:  # its column is narrow
        lines = list(flag_words("on" if is_on else "from", *twin)) if twin else ["not drawn"]
    else:
        said = [f"{tag} goes on" if is_on else f"{tag} comes from"]
        said += [f"sheet {twin[0]}, zone {twin[1]}"] if twin else ["not drawn"]
        lines = set_phrases(said, room, BODY, join=": ")
    turn = ink.FLAG_JOINED_ABOVE if is_on else ink.FLAG_JOINED_BELOW
    top = at.moved(SIGN / 2 + 1.5, -len(lines) * PITCH / 2)
    return [ink.flag(name, at, turn, link), *ink.words(f"{name}:words", lines, top)]


def _feed_items(model: Model, feed: PlacedFeed) -> list[Item]:
    """Return the line from a board to one it feeds, and the protective conductor under it."""
    board = model.installation.boards[feed.child]
    circuit = model.installation.circuits.get(board.fed_by)
    state = board.state if circuit is None else circuit.state
    net = SUPPLY if circuit is None else circuit.tag
    low = feed.y + feed.apart_mm
    items = [
        ink.wire(f"feed:{feed.child}", net, (feed.x0, feed.y), (feed.x1, feed.y), state=state),
    ]
    if model.installation.supply is not None:
        items.append(ink.protective(f"feed:{feed.child}:earth", (feed.x0, low), (feed.x1, low)))
    way = [] if circuit is None or not feed.has_way else [circuit.way]
    at = Point(feed.x0 + 1.5, feed.y - BODY - 1.5)
    return items + ink.words(f"feed:{feed.child}:way", way, at, bold=True)
