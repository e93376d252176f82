"""What cameras see, true to scale: wedges parted by the class of picture detail, cut off by walls.

A class holds as far as its least density of pixels (BS EN 62676-4) is reached on a plane square to
the line of sight. Meaning is told by letter, tint and strokes at the end of a class, never by tone
alone.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.free_room import part_in_box
from asfitted.layout.lettering import BODY, box_of
from asfitted.layout.linework import widths_for
from asfitted.layout.plan.plan_things import look_direction
from asfitted.layout.plan.plan_view import WALL_MM
from asfitted.layout.sheet_layout import Item, Path, Stroke, Text
from asfitted.layout.table import Column, Table
from asfitted.reference.cctv import pixel_density_classes
from asfitted.rounding import rounded_down

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.drawing import Drawing
    from asfitted.layout.plan.plan_things import PlacedThing, PlanThing
    from asfitted.layout.plan.plan_view import PlanView
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Wall

W = widths_for("A3")
RAY_DEG = 4.0
OUTSIDE_MM = 45.0  # of paper: a view outside is drawn so far at most
TINTED, HACHURED = ("inspect", "identify"), "recognise"
HACHURE_MM = 2.2  # strokes inside the far end of a class
SHOWN = ("inspect", "identify", "recognise", "observe", "detect")  # finest first
LEAST_RING_MM = 2.0  # a thinner ring is not parted from the next
WIDEST_DEG = 170.0


@dataclass(frozen=True)
class Reach:
    """How far a class of detail holds: its name and its distance in m."""

    name: str
    distance_m: float

    @property
    def letter(self) -> str:
        """Its letter on the plan; inspect and identify share their first one."""
        return "X" if self.name == "inspect" else self.name[0].upper()


def reaches_of(field_deg: float, pixels: int) -> tuple[Reach, ...]:
    """Return how far each class holds, finest first.

    D = px / (2 tan(field / 2) × density): the width in view at D holds that many pixels.

    Args:
        field_deg: horizontal field of view, degrees.
        pixels: pixels across the picture.

    Source:
        BS EN 62676-4:2015 classes; geometry of a thin lens.
    """
    densities = {name: figure.value for name, figure in pixel_density_classes()}
    half = math.tan(math.radians(min(field_deg, WIDEST_DEG)) / 2)
    return tuple(Reach(n, pixels / (2 * half * densities[n])) for n in SHOWN if n in densities)


def camera_reaches(model: Model, tag: str) -> tuple[Reach, ...]:
    """Return how far each class holds for a camera; none where its lens is not recorded."""
    result, device = model.results.data.get(tag), model.installation.data_devices.get(tag)
    if result is None or device is None or not device.pixels or not result.field_of_view_deg:
        return ()
    return reaches_of(result.field_of_view_deg, device.pixels)


def camera_table(model: Model, things: Sequence[PlanThing]) -> Table | None:
    """Return for each camera on a plan how far each class holds, or None without cameras."""
    cameras = [thing for thing in things if thing.looks is not None]
    if not cameras:
        return None
    names = [name for name in SHOWN if name in dict(pixel_density_classes())]
    columns = (
        Column("Camera", wraps=False),
        Column("Field", "end", wraps=False),
        *(Column(f"{name} m", "end") for name in names),
    )
    rows = []
    for thing in cameras:
        reaches = {r.name: rounded_down(r.distance_m, 1) for r in camera_reaches(model, thing.tag)}
        result = model.results.data.get(thing.tag)
        field = result.field_of_view_deg if result else None
        told = "not recorded" if field is None else f"{field:.0f}°"
        rows.append((thing.tag, told, *(reaches.get(name, "–") for name in names)))
    return Table(columns, tuple(rows), tuple(f"view:{thing.tag}" for thing in cameras))


TABLE_TITLE = "Picture detail of cameras holds as far as"


def draw_views(
    drawing: Drawing, view: PlanView, model: Model, placed: Sequence[PlacedThing], limits: Box
) -> list[tuple[str, Point, str]]:
    """Draw what each camera sees; return the letters to be written: camera, place, letter."""
    letters: list[tuple[str, Point, str]] = []
    for one in placed:
        reaches = camera_reaches(model, one.thing.tag)
        if one.thing.looks is not None and reaches:
            letters += _draw_view(drawing, view, model, (one.thing, reaches), limits)
    return letters


def _draw_view(
    drawing: Drawing,
    view: PlanView,
    model: Model,
    camera: tuple[PlanThing, tuple[Reach, ...]],
    limits: Box,
) -> list[tuple[str, Point, str]]:
    thing, reaches = camera
    wall = model.installation.walls[thing.position.wall]
    result = model.results.data[thing.tag]
    half = math.radians(min(result.field_of_view_deg or 0.0, WIDEST_DEG)) / 2
    apex = _apex(view, wall, thing)
    look = look_direction(wall, thing)
    rays = _rays(view, model, wall, (apex, look, half), limits)
    parts: list[Path] = []
    letters: list[tuple[str, Point, str]] = []
    near = 0.0
    for reach in reaches:
        far = reach.distance_m * 1000 / view.scale
        if far - near < LEAST_RING_MM:
            continue
        ring = _ring(apex, rays, near, far)
        if ring is None:
            break
        parts += _ring_paths(ring, apex, rays, (near, far), reach.name)
        letters.append((thing.tag, _middle(apex, look, rays, (near, far)), reach.letter))
        near = far
    ends = tuple(_along(apex, ray, min(length, near)) for ray, length in rays)
    parts.append(Path((apex, *ends), Stroke(W.narrow, "long_dash_double_dot"), closed=True))
    title = f"what {thing.tag} sees"
    drawing.draw(f"view:{thing.tag}", "outline", *parts, title=title)
    return letters


def _apex(view: PlanView, wall: Wall, thing: PlanThing) -> Point:
    if thing.hangs:
        return view.at(thing.position.at.x, thing.position.at.y)
    depth = -WALL_MM / view.scale if thing.position.outside else 0.3
    return view.on_wall(wall, thing.position.along_mm, depth)


def _rays(
    view: PlanView,
    model: Model,
    wall: Wall,
    sight: tuple[Point, Point, float],
    limits: Box,
) -> list[tuple[Point, float]]:
    """Return lines of sight with how far each goes before a wall or the edge, mm of paper."""
    apex, look, half = sight
    count = max(4, math.ceil(2 * math.degrees(half) / RAY_DEG))
    turns = [half * (2 * i / count - 1) for i in range(count + 1)]
    faces: list[tuple[Point, Point]] = []
    inside = _is_inside(view, wall, apex)
    if inside:
        for name in model.installation.rooms[wall.room].walls:
            other = model.installation.walls[name]
            faces.append((view.on_wall(other, 0.0, 0.0), view.on_wall(other, other.length_mm, 0.0)))
        turns += _corner_turns(apex, look, half, faces)
    most = math.inf if inside else OUTSIDE_MM
    rays = [_turned(look, turn) for turn in sorted(turns)]
    return [
        (ray, _free_length(apex, ray, faces, min(most, _edge(apex, ray, limits)))) for ray in rays
    ]


def _is_inside(view: PlanView, wall: Wall, apex: Point) -> bool:
    """Tell whether a place lies on the room's side of a wall."""
    face = view.on_wall(wall, 0.0, 0.0)
    return (apex.x - face.x) * wall.inward.x - (apex.y - face.y) * wall.inward.y > 0


def _corner_turns(
    apex: Point, look: Point, half: float, faces: Sequence[tuple[Point, Point]]
) -> list[float]:
    """Return the directions to the corners of a room, and just to both sides of each."""
    found = []
    for corner, _ in faces:
        dx, dy = corner.x - apex.x, corner.y - apex.y
        turn = math.atan2(look.x * dy - look.y * dx, look.x * dx + look.y * dy)
        found += [t for t in (turn - 1e-4, turn + 1e-4) if -half < t < half]
    return found


def _edge(apex: Point, ray: Point, limits: Box) -> float:
    far = _along(apex, ray, 1e4)
    span = part_in_box(apex, far, limits)
    return 0.0 if span is None else span[1] * 1e4


def _free_length(
    apex: Point, ray: Point, faces: Sequence[tuple[Point, Point]], most: float
) -> float:
    reach = most
    for a, b in faces:
        dx, dy = b.x - a.x, b.y - a.y
        skew = ray.x * dy - ray.y * dx
        if abs(skew) < 1e-9:
            continue
        t = ((a.x - apex.x) * dy - (a.y - apex.y) * dx) / skew
        u = ((a.x - apex.x) * ray.y - (a.y - apex.y) * ray.x) / skew
        if t > 0 and 0 <= u <= 1:
            reach = min(reach, t)
    return reach


def _turned(look: Point, angle: float) -> Point:
    x = look.x * math.cos(angle) - look.y * math.sin(angle)
    y = look.x * math.sin(angle) + look.y * math.cos(angle)
    return Point(x, y)


def _along(apex: Point, ray: Point, length: float) -> Point:
    return apex.moved(ray.x * length, ray.y * length)


def _ring(
    apex: Point, rays: Sequence[tuple[Point, float]], near: float, far: float
) -> tuple[Point, ...] | None:
    """Return the part of a wedge between two distances, or None where walls leave nothing of it."""
    if all(length <= near + LEAST_RING_MM for _, length in rays):
        return None
    outer = [_along(apex, ray, max(min(length, far), min(length, near))) for ray, length in rays]
    inner = [_along(apex, ray, min(length, near)) for ray, length in reversed(rays)]
    return (*outer, *inner) if near else (*outer, apex)


def _ring_paths(
    ring: tuple[Point, ...],
    apex: Point,
    rays: Sequence[tuple[Point, float]],
    span: tuple[float, float],
    name: str,
) -> list[Path]:
    """Return tint or strokes of a ring, and the arc at its far side where it is not a wall."""
    near, far = span
    paths: list[Path] = []
    if name in TINTED:
        paths.append(Path(ring, None, closed=True, fill="tint"))
    if name == HACHURED:
        for ray, length in rays:
            if length >= far:
                ends = _along(apex, ray, max(near, far - HACHURE_MM)), _along(apex, ray, far)
                paths.append(Path(ends, Stroke(W.narrow)))
    arc: list[Point] = []
    for ray, length in [*rays, (Point(0, 0), 0.0)]:
        if length >= far:
            arc.append(_along(apex, ray, far))
        else:
            if len(arc) > 1:
                paths.append(Path(tuple(arc), Stroke(W.narrow, "dashed")))
            arc = []
    return paths


def _middle(
    apex: Point, look: Point, rays: Sequence[tuple[Point, float]], span: tuple[float, float]
) -> Point:
    """Return the middle of a ring along the line of sight nearest to straight on that is in it."""
    near, far = span
    inside = [(ray, length) for ray, length in rays if length > near + LEAST_RING_MM]
    ray, length = max(inside, key=lambda r: round(r[0].x * look.x + r[0].y * look.y, 6))
    return _along(apex, ray, (near + min(far, length)) / 2)


def write_letters(drawing: Drawing, letters: Sequence[tuple[str, Point, str]]) -> None:
    """Write the letter of each class in its ring, where nothing else is."""
    for tag, at, letter in letters:
        text = Text(at.moved(dy=BODY / 2), letter, BODY, "middle")
        if drawing.room.is_free(box_of(text), 0.4):
            drawing.add(Item(f"view:{tag}:{letter}", "text", (text,)))
