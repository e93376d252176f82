"""The small key plan on an elevation sheet: which wall this is, and which way one looks at it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY, TAG, text_item
from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.plan.north import north_direction, north_items
from asfitted.layout.sheet_layout import Item, Path, Stroke

if TYPE_CHECKING:
    from collections.abc import Callable

    from asfitted.resolve.installation import Installation, Room, Wall

W = widths_for("A3")
WIDTH_MM, HEIGHT_MM = 58.0, 44.0
PLAN_MM = (36.0, 26.0)  # greatest size of the outline itself


def key_inset(installation: Installation, room: Room, wall: Wall, at: Point) -> tuple[Item, ...]:
    """Return the key plan from its top left corner: outline, this wall heavy, arrow, north."""
    walls = [installation.walls[name] for name in room.walls]
    xs, ys = [w.start.x for w in walls], [w.start.y for w in walls]
    span_x, span_y = max(xs) - min(xs) or 1.0, max(ys) - min(ys) or 1.0
    ratio = min(PLAN_MM[0] / span_x, PLAN_MM[1] / span_y)
    middle = Point(at.x + 24.0, at.y + 27.0)
    centre = Point((max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2)

    def place(p: Point) -> Point:
        return Point(middle.x + (p.x - centre.x) * ratio, middle.y - (p.y - centre.y) * ratio)

    items = [text_item("key:title", "Key plan", at.moved(dy=TAG), TAG, bold=True)]
    outline = Path(tuple(place(w.start) for w in walls), Stroke(W.narrow), closed=True)
    a = place(wall.start)
    b = place(_end(wall))
    heavy = polyline((a.x, a.y), (b.x, b.y), width_mm=1.4)
    items.append(Item("key:outline", "outline", (outline, heavy)))
    items.append(Item("key:view", "outline", _arrow(wall, a, b)))
    items += [_letter(each, place, strong=each.name == wall.name) for each in walls]
    items += north_items(
        "key", Point(at.x + 52.0, at.y + 17.0), north_direction(installation, room)
    )
    return tuple(items)


def key_inset_box(at: Point) -> Box:
    """Return the room that the key plan needs."""
    return Box(at.x, at.y, at.x + WIDTH_MM, at.y + HEIGHT_MM)


def _end(wall: Wall) -> Point:
    return wall.start.moved(wall.direction.x * wall.length_mm, wall.direction.y * wall.length_mm)


def _arrow(wall: Wall, a: Point, b: Point) -> tuple[Path, ...]:
    """Return the viewing arrow: from the middle of the room straight at the wall."""
    middle = Point((a.x + b.x) / 2, (a.y + b.y) / 2)
    inward = Point(wall.inward.x, -wall.inward.y)  # y runs down on the sheet
    tip = middle.moved(inward.x * 2.0, inward.y * 2.0)
    tail = tip.moved(inward.x * 8.0, inward.y * 8.0)
    base = tip.moved(inward.x * 2.8, inward.y * 2.8)
    side = Point(-inward.y * 1.2, inward.x * 1.2)
    head = Path(
        (tip, base.moved(side.x, side.y), base.moved(-side.x, -side.y)),
        None,
        closed=True,
        fill="black",
    )
    return (polyline((tail.x, tail.y), (base.x, base.y), width_mm=W.narrow), head)


def _letter(wall: Wall, place: Callable[[Point], Point], *, strong: bool) -> Item:
    a = place(wall.start)
    b = place(_end(wall))
    out = Point(-wall.inward.x, wall.inward.y)
    at = Point((a.x + b.x) / 2 + out.x * 4.0, (a.y + b.y) / 2 + out.y * 4.0 + BODY / 2)
    return text_item(f"key:wall:{wall.name}", wall.name, at, BODY, anchor="middle", bold=strong)
