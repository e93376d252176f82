"""The small key plan on an elevation sheet: which wall this is, and which way one looks at it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.drawing import Drawing
from asfitted.layout.free_room import FreeRoom
from asfitted.layout.lettering import BODY, TAG, box_of, shortened, text_item
from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.plan.north import north_direction, north_items
from asfitted.layout.sheet_layout import Path, Stroke, Text

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from asfitted.layout.sheet_layout import Item
    from asfitted.resolve.installation import Installation, Room, Wall

W = widths_for("A3")
WIDTH_MM = 58.0
PLAN_MM = (36.0, 26.0)  # greatest size of the outline itself
LOW_PLAN_MM = (36.0, 15.0)
OUTSIDE_MM = 10.0  # less of it where arrows stand outside, too
ABOVE_MM, BELOW_MM = 14.0, 4.0  # title, letters and arrows round the outline


@dataclass(frozen=True)
class ShownWall:
    """A wall that the sheet shows: the part of it, and from which side."""

    wall: Wall  # as built, not as seen from outside
    from_mm: float
    to_mm: float
    face: str = "inside"


def key_height_mm(*, is_low: bool) -> float:
    """Return the height of the key plan with its title."""
    return ABOVE_MM + (LOW_PLAN_MM if is_low else PLAN_MM)[1] + BELOW_MM


def key_inset(
    installation: Installation,
    room: Room,
    shown: Sequence[ShownWall],
    at: Point,
    *,
    is_low: bool = False,
) -> tuple[Item, ...]:
    """Return the key plan from its top left corner: outline, walls heavy, arrows, north."""
    walls = [installation.walls[name] for name in room.walls]
    size = LOW_PLAN_MM if is_low else PLAN_MM
    if any(each.face == "outside" for each in shown):
        size = (size[0] - OUTSIDE_MM, size[1])
    xs, ys = [w.start.x for w in walls], [w.start.y for w in walls]
    span_x, span_y = max(xs) - min(xs) or 1.0, max(ys) - min(ys) or 1.0
    ratio = min(size[0] / span_x, size[1] / span_y)
    middle = Point(at.x + 24.0, at.y + ABOVE_MM + size[1] / 2)
    centre = Point((max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2)

    def place(p: Point) -> Point:
        return Point(middle.x + (p.x - centre.x) * ratio, middle.y - (p.y - centre.y) * ratio)

    drawing = Drawing(
        FreeRoom(Box(at.x, at.y, at.x + WIDTH_MM, at.y + key_height_mm(is_low=is_low)))
    )
    title = (
        "Key plan"
        if len(installation.rooms) < 2
        else shortened(room.name, WIDTH_MM, TAG, bold=True)
    )
    drawing.add(text_item("key:title", title, at.moved(dy=TAG), TAG, bold=True))
    outline = Path(tuple(place(w.start) for w in walls), Stroke(W.narrow), closed=True)
    drawing.draw("key:outline", "outline", outline, *(_heavy(s, place) for s in shown))
    for i, each in enumerate(shown):
        drawing.draw(f"key:view:{i}", "outline", *_arrow(each, place))
    north = Point(at.x + 52.0, at.y + 17.0)
    drawing.room.take_solid(Box(north.x - 7.0, at.y + 5.0, at.x + WIDTH_MM, north.y + 8.0))
    names = {s.wall.name for s in shown}
    for wall in sorted(walls, key=lambda w: w.name not in names):
        text = _letter(wall, place, strong=wall.name in names)
        if drawing.room.is_free(box_of(text), 0.5):
            drawing.draw(f"key:wall:{wall.name}", "text", text)
    drawing.extend(north_items("key", north, north_direction(installation, room)))
    return tuple(drawing.items)


def _heavy(shown: ShownWall, place: Callable[[Point], Point]) -> Path:
    a, b = place(_along(shown.wall, shown.from_mm)), place(_along(shown.wall, shown.to_mm))
    return polyline((a.x, a.y), (b.x, b.y), width_mm=1.4)


def _along(wall: Wall, along_mm: float) -> Point:
    return wall.start.moved(wall.direction.x * along_mm, wall.direction.y * along_mm)


def _arrow(shown: ShownWall, place: Callable[[Point], Point]) -> tuple[Path, ...]:
    """Return the viewing arrow: straight at the wall, from the side from which it is seen."""
    wall = shown.wall
    middle = place(_along(wall, (shown.from_mm + shown.to_mm) / 2))
    sign = 1.0 if shown.face == "inside" else -1.0
    inward = Point(wall.inward.x * sign, -wall.inward.y * sign)  # y runs down on the sheet
    tip = middle.moved(inward.x * 1.5, inward.y * 1.5)
    tail = tip.moved(inward.x * 5.0, inward.y * 5.0)
    base = tip.moved(inward.x * 2.4, inward.y * 2.4)
    side = Point(-inward.y * 1.1, inward.x * 1.1)
    head = Path(
        (tip, base.moved(side.x, side.y), base.moved(-side.x, -side.y)),
        None,
        closed=True,
        fill="black",
    )
    return (polyline((tail.x, tail.y), (base.x, base.y), width_mm=W.narrow), head)


def _letter(wall: Wall, place: Callable[[Point], Point], *, strong: bool) -> Text:
    a, b = place(wall.start), place(_along(wall, wall.length_mm))
    out = Point(-wall.inward.x, wall.inward.y)
    name = wall.letter or wall.name
    reach = 2.6 + abs(out.x) * text_width_mm(name, BODY, bold=strong) / 2 + abs(out.y) * BODY / 2
    at = Point((a.x + b.x) / 2 + out.x * reach, (a.y + b.y) / 2 + out.y * reach + BODY / 2)
    return Text(at, name, BODY, anchor="middle", bold=strong)
