"""Marks on the plan: which sheet shows which wall, and the name of the room."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY, TAG, box_of, line_pitch_mm
from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.sheet_layout import Circle, Item, Path, Stroke, Text

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.drawing import Drawing
    from asfitted.layout.plan.plan_view import PlanView
    from asfitted.layout.sheet_model import Numbers
    from asfitted.resolve.installation import Installation, Room, Wall

W = widths_for("A3")
RADIUS = 6.0
POINTER_MM = 4.0
CLOSE_MM = 11.0  # where there is no row of symbols
BEFORE_MM = 24.0  # a row of symbols with their tags stands between a mark and the runs


def draw_wall_mark(
    drawing: Drawing, view: PlanView, wall: Wall, depth: float, within: Box
) -> WallMark | None:
    """Keep room for the circle with letter, sheet and arrow in front of a wall.

    Args:
        drawing: what has been drawn so far.
        view: the plan on the sheet.
        wall: the wall.
        within: box on the sheet that the mark stays inside.
        depth: how much paper the runs beside the wall take, mm; a row of symbols follows them.

    Returns:
        The mark, or None when the room is too full for it.
    """
    places = [
        *_mark_places(view, wall, depth + BEFORE_MM),
        *_mark_places(view, wall, depth + CLOSE_MM),
    ]
    for centre in places:
        tip = _tip(wall, centre)
        ring = Box(centre.x, centre.y, centre.x, centre.y).grown(RADIUS + 0.5)
        box = ring.joined(Box(tip.x, tip.y, tip.x, tip.y))
        if not within.holds(box) or not drawing.room.is_free(box, 0.3):
            continue
        drawing.room.take_solid(box)
        return WallMark(wall, centre)
    return None


def _mark_places(view: PlanView, wall: Wall, nearest: float) -> Iterator[Point]:
    """Yield places in front of a wall: its middle first, then to either side and further off."""
    length = wall.length_mm / view.scale
    for depth in (nearest + 5.0 * i for i in range(12)):
        for i in range(int(length / 2 / 5.0)):
            for side in (1.0, -1.0) if i else (1.0,):
                along = (length / 2 + side * i * 5.0) * view.scale
                yield view.on_wall(wall, along, depth)


def _tip(wall: Wall, centre: Point) -> Point:
    reach = RADIUS + POINTER_MM
    return centre.moved(-wall.inward.x * reach, wall.inward.y * reach)


@dataclass(frozen=True)
class WallMark:
    """The mark of a wall in its place, drawn when the sheets are numbered."""

    wall: Wall
    centre: Point

    def items(self, numbers: Numbers) -> tuple[Item, ...]:
        """Return the circle with the letter of the wall, its elevation's sheet, and an arrow."""
        wall, centre = self.wall, self.centre
        out = Point(-wall.inward.x, wall.inward.y)
        base = centre.moved(out.x * RADIUS * 0.9, out.y * RADIUS * 0.9)
        across = Point(-out.y * 2.6, out.x * 2.6)
        left, right = base.moved(across.x, across.y), base.moved(-across.x, -across.y)
        pointer = Path((_tip(wall, centre), left, right), None, closed=True, fill="black")
        key = f"elevation/{wall.name}"
        sheet = numbers.by_key.get(key, "–")
        ends = (centre.x - RADIUS, centre.y), (centre.x + RADIUS, centre.y)
        parts = (
            pointer,
            Circle(centre, RADIUS, Stroke(W.wide), fill="white"),
            polyline(*ends, width_mm=W.narrow),
        )
        letter = wall.letter or wall.name
        texts = (
            Text(centre.moved(dy=-1.0), letter, TAG, anchor="middle", bold=True),
            Text(centre.moved(dy=BODY + 1.1), sheet, BODY, anchor="middle"),
        )
        link = f"{sheet}#wall:{wall.name}" if key in numbers.by_key else ""
        name = f"wall-mark:{wall.name}"
        return (
            Item(name, "outline", parts, title=f"elevation of wall {wall.name}"),
            Item(f"{name}:words", "text", texts, link=link),
        )


def draw_room_name(
    drawing: Drawing, view: PlanView, installation: Installation, room: Room, within: Box
) -> bool:
    """Write name, size and ceiling of a room as near its middle as there is room, or its name."""
    walls = [installation.walls[name] for name in room.walls]
    xs, ys = [w.start.x for w in walls], [w.start.y for w in walls]
    size = f"{(max(xs) - min(xs)) / 1000:g} m × {(max(ys) - min(ys)) / 1000:g} m"
    lines = (
        f"{size}, {room.height_mm / 1000:g} m high",
        f"ceiling: {room.ceiling or 'not recorded'}",
    )
    corners = view.at(min(xs), max(ys)), view.at(max(xs), min(ys))
    x0, x1 = (min(max(p.x, within.x0), within.x1) for p in corners)
    y0, y1 = (min(max(p.y, within.y0), within.y1) for p in corners)
    middle = Point((x0 + x1) / 2, (y0 + y1) / 2)
    here = Box(x0, y0, x1, y1)
    offsets = [(dx * 4.0, dy * 4.0) for dx in range(-12, 13) for dy in range(-12, 13)]
    offsets.sort(key=lambda o: (math.hypot(*o), o))
    for told in (lines, lines[:1], ()):
        for dx, dy in offsets:
            at = middle.moved(dx, dy)
            texts = [Text(at, room.name, TAG, anchor="middle", bold=True)]
            texts += [
                Text(at.moved(dy=(i + 1) * line_pitch_mm(BODY) + 0.6), line, BODY, anchor="middle")
                for i, line in enumerate(told)
            ]
            boxes = [box_of(t) for t in texts]
            if all(here.holds(b) and drawing.room.is_free(b) for b in boxes):
                drawing.add(Item(f"room:{room.name}", "text", tuple(texts)))
                return True
    return False
