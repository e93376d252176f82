"""Places the rows of the data diagram on sheets: devices left, cabinet with its ports right."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, lines_of_text, text_item, wrap
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.sheet_layout import Item, Path, Stroke, SymbolUse

if TYPE_CHECKING:
    from asfitted.layout.data_diagram.rows import LegWords, LinkRow
    from asfitted.layout.sheet_layout import Pattern

FACTS_X, FACTS_MM = 0.0, 72.0
DEVICE_X = 76.0
BALUN_X, FAR_BALUN_X = 96.0, 250.0
WORDS_X = 112.0
PORT_X, PORT_MM, PORT_HIGH = 268.0, 38.0, 6.0
LEG_PITCH, ROW_GAP = 10.0, 10.0
PATTERNS: dict[str, Pattern] = {
    "signal": "long_dash_double_dot",
    "supply": "dashed",
    "network": "continuous",
}
LEG_WORDS = {
    "signal": "Picture leg (coaxial or one pair through baluns)",
    "supply": "12 V d.c. leg in the same cable",
    "network": "Four-pair data cable; PoE where stated",
}
WIDTH = 0.35


def row_height_mm(row: LinkRow) -> float:
    """Return the height that a row needs, gap below included."""
    legs = max(len(row.legs), 1)
    facts = TAG + len(_fact_lines(row)) * line_pitch_mm(BODY) + 2.0
    return max(facts, 6.0 + legs * LEG_PITCH) + ROW_GAP - 4.0


def _fact_lines(row: LinkRow) -> list[str]:
    return [line for fact in row.facts for line in wrap(fact, FACTS_MM, BODY)]


def place_row(row: LinkRow, at: Point) -> tuple[Item, ...]:
    """Place one row with its top left corner at ``at``."""
    ident = row.device
    items = [
        text_item(
            f"{ident}:tag", f"{row.device}  {row.state}".rstrip(), at.moved(dy=TAG), TAG, bold=True
        ),
        Item(
            f"{ident}:facts",
            "text",
            lines_of_text(_fact_lines(row), at.moved(dy=TAG + line_pitch_mm(BODY) + 0.8)),
        ),
    ]
    first_y = at.y + 6.0
    symbol_at = Point(at.x + DEVICE_X, first_y - 5.0)
    # the lens looks away from the cable; outlets and access points stand on their side
    camera = row.symbol.startswith("camera")
    width = 0.25 if row.state else WIDTH
    use = SymbolUse(
        row.symbol, symbol_at, turn=0 if camera else 90, mirrored=camera, width_mm=width
    )
    items.append(Item(ident, "symbol", (use,), title=row.device))
    for i, leg in enumerate(row.legs):
        y = first_y + i * LEG_PITCH
        items.extend(_leg(ident, leg, symbol_at, at.x, y, camera=camera))
    if len(row.legs) > 1:
        items.append(_one_cable_ring(ident, at.x + WORDS_X - 6.0, first_y, len(row.legs)))
    return tuple(items)


def _leg(
    ident: str, leg: LegWords, symbol_at: Point, left: float, y: float, *, camera: bool
) -> list[Item]:
    """Return the wires, baluns, words and port of one leg."""
    name, net = f"{ident}:{leg.carries}", f"{ident}:{leg.carries}"
    right = left + PORT_X
    items: list[Item] = []
    start = Point(symbol_at.x + (9.0 if camera else 10.0), symbol_at.y + 5.0)
    if leg.carries == "supply":
        start = Point(symbol_at.x + 6.5, symbol_at.y + 6.8)
    line = [start, Point(start.x, y)] if leg.carries == "supply" else [Point(start.x, y)]
    if leg.baluns:
        near, far = left + BALUN_X, left + FAR_BALUN_X
        items.append(_wire(f"{name}:1", net, [*line, Point(near, y)], leg))
        items.append(Item(f"{ident}:balun:1", "symbol", (SymbolUse("balun", Point(near, y - 5)),)))
        net2 = f"{net}:pair"
        items.append(_wire(f"{name}:2", net2, [Point(near + 10, y), Point(far, y)], leg))
        items.append(
            Item(
                f"{ident}:balun:2",
                "symbol",
                (SymbolUse("balun", Point(far, y - 5), mirrored=True),),
            )
        )
        items.append(_wire(f"{name}:3", f"{net}:coax", [Point(far + 10, y), Point(right, y)], leg))
    else:
        items.append(_wire(name, net, [*line, Point(right, y)], leg))
    words_x = left + WORDS_X
    if leg.above:
        items.append(text_item(f"{name}:above", leg.above, Point(words_x, y - 1.4)))
    items.append(text_item(f"{name}:below", leg.below, Point(words_x, y + 1.4 + BODY)))
    port = Box(right, y - PORT_HIGH / 2, right + PORT_MM, y + PORT_HIGH / 2)
    items.append(Item(f"{name}:port", "symbol", (rectangle(port, width_mm=WIDTH),)))
    words = Point(port.x0 + 1.5, y + BODY / 2)
    items.append(text_item(f"{name}:port-words", leg.port, words))
    return items


def _wire(ident: str, net: str, points: list[Point], leg: LegWords) -> Item:
    stroke = Stroke(WIDTH, PATTERNS[leg.carries])
    return Item(ident, "wire", (Path(tuple(points), stroke),), net=net)


def _one_cable_ring(ident: str, x: float, first_y: float, legs: int) -> Item:
    """Return a slim ring round the legs that lie in one cable."""
    top, bottom = first_y - 2.2, first_y + (legs - 1) * LEG_PITCH + 2.2
    ring = (
        (x - 1.2, top + 1.5),
        (x, top),
        (x + 1.2, top + 1.5),
        (x + 1.2, bottom - 1.5),
        (x, bottom),
        (x - 1.2, bottom - 1.5),
        (x - 1.2, top + 1.5),
    )
    return Item(f"{ident}:one-cable", "outline", (polyline(*ring, width_mm=0.25),))
