"""Marks on the plan: which sheet shows which wall, the name of the room, what cameras see."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY, TAG, box_of, line_pitch_mm
from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.plan.plan_things import lens_at, look_direction
from asfitted.layout.sheet_layout import Circle, Item, Path, Stroke, Text

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.plan.plan_things import PlacedThing
    from asfitted.layout.plan.plan_view import PlanView
    from asfitted.layout.sheet_model import Numbers
    from asfitted.resolve.installation import Installation, Room, Wall

W = widths_for("A3")
RADIUS = 6.0
POINTER_MM = 4.0
WEDGE_MM, RAYS = 20.0, 6
BEFORE_MM = 24.0  # a row of symbols with their tags stands between a mark and the runs


def draw_wall_mark(
    drawing: Drawing, view: PlanView, wall: Wall, numbers: Numbers, depth: float
) -> Box | None:
    """Draw the circle with letter, sheet and arrow in front of a wall; return its box.

    Args:
        drawing: what has been drawn so far.
        view: the plan on the sheet.
        wall: the wall.
        numbers: sheet numbers.
        depth: how much paper the runs beside the wall take, mm; a row of symbols follows them.

    Returns:
        The box taken, or None when the room is too full for the mark.
    """
    for centre in _mark_places(view, wall, depth + BEFORE_MM):
        tip = _tip(wall, centre)
        ring = Box(centre.x, centre.y, centre.x, centre.y).grown(RADIUS + 0.5)
        box = ring.joined(Box(tip.x, tip.y, tip.x, tip.y))
        if not drawing.room.is_free(box, 0.3):
            continue
        _draw_mark(drawing, wall, centre, numbers)
        drawing.room.take_solid(box)
        return box
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


def _draw_mark(drawing: Drawing, wall: Wall, centre: Point, numbers: Numbers) -> None:
    out = Point(-wall.inward.x, wall.inward.y)
    tip = _tip(wall, centre)
    base = centre.moved(out.x * RADIUS * 0.9, out.y * RADIUS * 0.9)
    across = Point(-out.y * 2.6, out.x * 2.6)
    pointer = Path(
        (tip, base.moved(across.x, across.y), base.moved(-across.x, -across.y)),
        None,
        closed=True,
        fill="black",
    )
    key = f"elevation/{wall.name}"
    sheet = numbers.by_key.get(key, "–")
    parts = (
        pointer,
        Circle(centre, RADIUS, Stroke(W.wide), fill="white"),
        polyline((centre.x - RADIUS, centre.y), (centre.x + RADIUS, centre.y), width_mm=W.narrow),
    )
    drawing.draw(
        f"wall-mark:{wall.name}", "outline", *parts, title=f"elevation of wall {wall.name}"
    )
    texts = (
        Text(centre.moved(dy=-1.0), wall.name, TAG, anchor="middle", bold=True),
        Text(centre.moved(dy=BODY + 1.1), sheet, BODY, anchor="middle"),
    )
    link = f"{sheet}#wall:{wall.name}" if key in numbers.by_key else ""
    drawing.add(Item(f"wall-mark:{wall.name}:words", "text", texts, link=link))


def draw_room_name(
    drawing: Drawing, view: PlanView, installation: Installation, room: Room
) -> None:
    """Write name, size and ceiling of a room as near its middle as there is room."""
    walls = [installation.walls[name] for name in room.walls]
    xs, ys = [w.start.x for w in walls], [w.start.y for w in walls]
    size = f"{(max(xs) - min(xs)) / 1000:g} m × {(max(ys) - min(ys)) / 1000:g} m"
    lines = (
        f"{size}, {room.height_mm / 1000:g} m high",
        f"ceiling: {room.ceiling or 'not recorded'}",
    )
    middle = view.at((max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2)
    offsets = [(dx * 4.0, dy * 4.0) for dx in range(-12, 13) for dy in range(-12, 13)]
    for dx, dy in sorted(offsets, key=lambda o: (math.hypot(*o), o)):
        at = middle.moved(dx, dy)
        texts = [Text(at, room.name, TAG, anchor="middle", bold=True)]
        texts += [
            Text(at.moved(dy=(i + 1) * line_pitch_mm(BODY) + 0.6), line, BODY, anchor="middle")
            for i, line in enumerate(lines)
        ]
        if all(drawing.room.is_free(box_of(t)) for t in texts):
            drawing.add(Item(f"room:{room.name}", "text", tuple(texts)))
            return


def draw_wedges(
    drawing: Drawing,
    view: PlanView,
    installation: Installation,
    results: CalculationResults,
    placed: Sequence[PlacedThing],
) -> int:
    """Outline what each camera with a known lens sees; return how many were drawn.

    Inside a room the outline ends at its walls.
    """
    count = 0
    for one in placed:
        result = results.data.get(one.thing.tag)
        if one.thing.looks is None or result is None or result.field_of_view_deg is None:
            continue
        wall = installation.walls[one.thing.position.wall]
        look = look_direction(wall, one.thing)
        half = math.radians(min(result.field_of_view_deg, 170.0)) / 2
        apex = lens_at(wall, one)
        room = installation.rooms[wall.room].walls if not one.thing.position.outside else ()
        faces = [_face(view, installation.walls[name]) for name in room]
        ends = [_seen(apex, _turned(look, half * i / RAYS), faces) for i in range(-RAYS, RAYS + 1)]
        shape = Path((apex, *ends), Stroke(W.narrow, "long_dash_double_dot"), closed=True)
        drawing.draw(f"view:{one.thing.tag}", "outline", shape)
        count += 1
    return count


def _face(view: PlanView, wall: Wall) -> tuple[Point, Point]:
    return view.on_wall(wall, 0.0, 0.0), view.on_wall(wall, wall.length_mm, 0.0)


def _turned(look: Point, angle: float) -> Point:
    x = look.x * math.cos(angle) - look.y * math.sin(angle)
    y = look.x * math.sin(angle) + look.y * math.cos(angle)
    return Point(x, y)


def _seen(apex: Point, ray: Point, faces: Sequence[tuple[Point, Point]]) -> Point:
    """Return where a line of sight ends: at a wall, or at the length that wedges are drawn."""
    reach = WEDGE_MM
    for a, b in faces:
        dx, dy = b.x - a.x, b.y - a.y
        skew = ray.x * dy - ray.y * dx
        if abs(skew) < 1e-9:
            continue
        t = ((a.x - apex.x) * dy - (a.y - apex.y) * dx) / skew
        u = ((a.x - apex.x) * ray.y - (a.y - apex.y) * ray.x) / skew
        if t > 0 and 0 <= u <= 1:
            reach = min(reach, t)
    return apex.moved(ray.x * reach, ray.y * reach)
