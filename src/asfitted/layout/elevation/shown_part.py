"""What a part of a wall, a detail of it or its outer face shows of all that the wall carries."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.layout.elevation.drops_on_wall import Stretch
    from asfitted.layout.elevation.runs_on_wall import RunPiece
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_view import WallPoint
    from asfitted.layout.elevation.window import Edge, Window

LEAST_MM = 1.0  # of a run or cable that is worth showing


def part_of(content: WallContent, window: Window, key: str) -> WallContent:
    """Return what a window shows of the content of a view; runs are cut at its sides."""
    return replace(
        content,
        key=key,
        window=window,
        pieces=tuple(p for piece in content.pieces for p in _piece(piece, window)),
        flags=tuple(f for f in content.flags if _has_corner(window, f.side, f.up_mm)),
        crossings=tuple(c for c in content.crossings if window.holds(c.at)),
        declared=tuple(d for d in content.declared if window.holds(d.at)),
        stretches=tuple(s for stretch in content.stretches for s in _stretch(stretch, window)),
        things=tuple(t for t in content.things if window.holds(t.at)),
        passages=tuple(p for p in content.passages if window.holds(p.at)),
        away=content.away if window.left.kind == "corner" else (),
        crossed=content.crossed if window.left.kind == "corner" else (),
    )


def _has_corner(window: Window, side: str, up_mm: float) -> bool:
    edge = window.left if side == "left" else window.right
    return edge.kind == "corner" and window.low_mm <= up_mm <= window.high_mm


def _piece(piece: RunPiece, window: Window) -> list[RunPiece]:
    ends = _within(piece.start, piece.end, window, is_level=piece.is_level)
    return [replace(piece, start=ends[0], end=ends[1])] if ends else []


def _stretch(stretch: Stretch, window: Window) -> list[Stretch]:
    if stretch.way not in ("drop", "clipped"):
        return [stretch] if window.holds(stretch.start) else []
    ends = _within(stretch.start, stretch.end, window, is_level=not stretch.is_upright)
    return [replace(stretch, start=ends[0], end=ends[1])] if ends else []


def _within(
    start: WallPoint, end: WallPoint, window: Window, *, is_level: bool
) -> tuple[WallPoint, WallPoint] | None:
    """Return the part of a straight length inside a window; an upright one is not cut in two."""
    low, high = sorted((start.up, end.up))
    if is_level:
        x0, x1 = max(start.along, window.from_mm), min(end.along, window.to_mm)
        if x1 - x0 < LEAST_MM or (window.is_detail and not _is_between(window, low, high)):
            return None
        return start._replace(along=x0), end._replace(along=x1)
    if not (window.holds_along(start.along) and window.holds_along(end.along)):
        return None
    if not window.is_detail:
        return start, end
    z0, z1 = max(low, window.low_mm), min(high, window.high_mm)
    if z1 - z0 < LEAST_MM:
        return None
    return start._replace(up=z0), end._replace(up=z1)


def _is_between(window: Window, low: float, high: float) -> bool:
    return window.low_mm <= low and high <= window.high_mm


def outer_face_of(content: WallContent) -> WallContent:
    """Return the view of the outer face of a wall: what is mounted there, seen from outside.

    Lengths count from the left as seen there, to the inner face of the wall at that end.
    """
    length = content.wall.length_mm
    wall = replace(
        content.wall,
        openings=tuple(
            sorted(
                (
                    replace(o, from_mm=length - o.from_mm - o.width_mm)
                    for o in content.wall.openings
                ),
                key=lambda o: o.from_mm,
            )
        ),
    )
    window = content.window
    things = [replace(t, at=_mirrored(t.at, length)) for t in content.things if t.is_outside]
    return replace(
        content,
        key=content.outside_key,
        face="outside",
        wall=wall,
        window=replace(window, left=_turned(window.right), right=_turned(window.left)),
        pieces=(),
        flags=(),
        crossings=(),
        passages=(),
        declared=tuple(replace(d, at=_mirrored(d.at, length)) for d in content.declared),
        stretches=tuple(_mirrored_stretch(s, length) for s in content.stretches if _leaves(s)),
        things=tuple(sorted(things, key=lambda t: (t.at.along, t.at.up, t.tag))),
        away=(),
        crossed=(),
        outside_key="",
    )


def _leaves(stretch: Stretch) -> bool:
    return stretch.is_outside or stretch.way == "through-wall"


def _turned(edge: Edge) -> Edge:
    return replace(edge, is_outer=not edge.is_outer)


def _mirrored(at: WallPoint, length_mm: float) -> WallPoint:
    return at._replace(along=round(length_mm - at.along, 3))


def _mirrored_stretch(stretch: Stretch, length_mm: float) -> Stretch:
    a, b = _mirrored(stretch.start, length_mm), _mirrored(stretch.end, length_mm)
    if stretch.is_upright or stretch.way == "through-wall":
        return replace(stretch, start=a, end=b)
    return replace(stretch, start=b, end=a, foot=stretch.top, top=stretch.foot)
