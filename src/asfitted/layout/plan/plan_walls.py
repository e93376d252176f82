"""Walls as double lines with their openings. Thickness is nominal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.plan.plan_view import WALL_MM
from asfitted.layout.sheet_layout import Path

if TYPE_CHECKING:
    from asfitted.geometry import Point
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.plan.plan_view import PlanView
    from asfitted.resolve.installation import Installation, Room, Wall

W = widths_for("A3")


def draw_walls(drawing: Drawing, view: PlanView, installation: Installation, room: Room) -> None:
    """Draw the walls of a room piece by piece between their openings, tinted between the lines."""
    walls = [installation.walls[name] for name in room.walls]
    for i, wall in enumerate(walls):
        before, after = walls[i - 1], walls[(i + 1) % len(walls)]
        thickness = WALL_MM / view.scale
        ends = (_reach(before, wall) * WALL_MM, wall.length_mm + _reach(wall, after) * WALL_MM)
        parts: list[Path] = []
        at = 0.0
        for opening in wall.openings:
            parts += _solid(view, wall, (at, opening.from_mm), ends, thickness)
            parts += _opening(view, wall, opening.from_mm, opening.width_mm, opening.kind)
            at = opening.from_mm + opening.width_mm
        parts += _solid(view, wall, (at, wall.length_mm), ends, thickness)
        drawing.draw(f"plan-wall:{wall.name}", "outline", *parts, title=f"wall {wall.name}")


def _reach(first: Wall, second: Wall) -> float:
    """Return how the outer line runs at a corner: on beyond an inner one, back at an outer one."""
    turn = first.direction.x * second.direction.y - first.direction.y * second.direction.x
    if abs(turn) < 1e-6:
        return 0.0
    return 1.0 if turn < 0 else -1.0


def _solid(
    view: PlanView,
    wall: Wall,
    span: tuple[float, float],
    ends: tuple[float, float],
    thickness: float,
) -> list[Path]:
    """Return a piece of wall: tinted body, inner and outer line, a line across at an opening."""
    a, b = span
    if b - a < 1.0:
        return []
    outer_a = -ends[0] if a == 0.0 else a
    outer_b = ends[1] if b == wall.length_mm else b
    p, q = view.on_wall(wall, a, 0.0), view.on_wall(wall, b, 0.0)
    r, s = view.on_wall(wall, outer_b, -thickness), view.on_wall(wall, outer_a, -thickness)
    paths = [
        Path((p, q, r, s), None, closed=True, fill="tint"),
        polyline((p.x, p.y), (q.x, q.y), width_mm=W.wide),
        polyline((s.x, s.y), (r.x, r.y), width_mm=W.wide),
    ]
    if a > 0.0:
        paths.append(_across(view, wall, a, thickness))
    if b < wall.length_mm:
        paths.append(_across(view, wall, b, thickness))
    return paths


def _across(view: PlanView, wall: Wall, along: float, thickness: float) -> Path:
    p, q = view.on_wall(wall, along, 0.0), view.on_wall(wall, along, -thickness)
    return polyline((p.x, p.y), (q.x, q.y), width_mm=W.wide)


def _opening(view: PlanView, wall: Wall, start: float, width: float, kind: str) -> list[Path]:
    """Return the sign of an opening: two panes for a window, dashes for a door."""
    thickness = WALL_MM / view.scale
    pattern = "continuous" if kind == "window" else "dashed"
    depths = (0.0, thickness) if kind == "window" else (thickness / 2,)
    lines = []
    for depth in depths:
        p = view.on_wall(wall, start, -depth)
        q = view.on_wall(wall, start + width, -depth)
        lines.append(polyline((p.x, p.y), (q.x, q.y), width_mm=W.narrow, pattern=pattern))  # type: ignore[arg-type]
    return lines


def opening_middle(view: PlanView, wall: Wall, index: int) -> Point:
    """Return the middle of an opening on the sheet."""
    opening = wall.openings[index]
    thickness = WALL_MM / view.scale
    return view.on_wall(wall, opening.from_mm + opening.width_mm / 2, -thickness / 2)
