"""Lines and areas cut off at the edge of a window on the sheet."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.drawing import Drawing
from asfitted.layout.free_room import part_in_box
from asfitted.layout.sheet_layout import Path

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import Kind, Primitive

HAIR_MM = 1e-6


def clipped(path: Path, box: Box) -> tuple[Path, ...]:
    """Return what of a path lies inside a box: its area, and its lines without the cut edges."""
    if all(box.grown(HAIR_MM).holds(Box(p.x, p.y, p.x, p.y)) for p in path.points):
        return (path,)
    made: list[Path] = []
    if path.fill is not None and path.closed:
        area = polygon_in_box(path.points, box)
        if len(area) > 2:  # a triangle at least
            made.append(replace(path, points=tuple(area), stroke=None))
    if path.stroke is not None:
        points = (*path.points, path.points[0]) if path.closed else path.points
        made += [Path(line, path.stroke) for line in _lines(points, box)]
    return tuple(made)


def _lines(points: Sequence[Point], box: Box) -> list[tuple[Point, ...]]:
    """Return the pieces of a polyline inside a box, those that follow on joined."""
    grown = box.grown(HAIR_MM)
    found: list[list[Point]] = []
    for a, b in pairwise(points):
        span = part_in_box(a, b, grown)
        if span is None:
            continue
        start, end = _between(a, b, span[0]), _between(a, b, span[1])
        if found and found[-1][-1] == start:
            found[-1].append(end)
        else:
            found.append([start, end])
    return [tuple(line) for line in found]


def _between(a: Point, b: Point, share: float) -> Point:
    return Point(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)


def polygon_in_box(points: Sequence[Point], box: Box) -> list[Point]:
    """Return a polygon cut to a box, one side after another (Sutherland and Hodgman's way)."""
    kept = list(points)
    for is_x, limit, sign in (
        (True, box.x0, 1.0),
        (True, box.x1, -1.0),
        (False, box.y0, 1.0),
        (False, box.y1, -1.0),
    ):
        kept = _one_side(kept, is_x=is_x, limit=limit, sign=sign)
    return kept


def _one_side(points: list[Point], *, is_x: bool, limit: float, sign: float) -> list[Point]:
    def over(p: Point) -> float:
        return sign * ((p.x if is_x else p.y) - limit)

    made: list[Point] = []
    for a, b in zip(points, [*points[1:], *points[:1]], strict=True):
        da, db = over(a), over(b)
        if da >= 0:
            made.append(a)
        if (da > 0 > db) or (da < 0 < db):
            made.append(_between(a, b, da / (da - db)))
    return made


@dataclass
class WindowDrawing(Drawing):
    """A drawing in which lines and areas end at the edge of a window."""

    window: Box | None = None

    def draw(
        self, ident: str, kind: Kind, *parts: Primitive, title: str = "", link: str = ""
    ) -> None:
        """Add an item made of what of these parts lies inside the window."""
        if self.window is None or kind not in ("outline", "dim"):
            super().draw(ident, kind, *parts, title=title, link=link)
            return
        kept: list[Primitive] = []
        for part in parts:
            kept += clipped(part, self.window) if isinstance(part, Path) else [part]
        if kept:
            super().draw(ident, kind, *kept, title=title, link=link)
