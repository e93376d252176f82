"""A symbol as plain primitives in its 10 x 10 box (x right, y down), read from its segments."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from asfitted.draw.symbols import _schemdraw as sd
from asfitted.draw.symbols._strokes import CAP_MM, flipped
from asfitted.errors import ReferenceDataError
from asfitted.geometry import Point

if TYPE_CHECKING:
    from asfitted.draw.symbols._sign import Sign

#: Arcs become chords of this many degrees: 5 micrometres off at a radius of 3.5 mm.
CHORD_DEG = 6.0


@dataclass(frozen=True)
class SymbolLine:
    """A polyline or polygon of a symbol."""

    points: tuple[Point, ...]
    closed: bool = False
    filled: bool = False
    dashed: bool = False
    narrow: bool = False


@dataclass(frozen=True)
class SymbolCircle:
    """A circle of a symbol."""

    centre: Point
    radius: float
    filled: bool = False


@dataclass(frozen=True)
class SymbolText:
    """Letters in a symbol, centred on ``x``. ``cap_mm`` holds on paper at any size of the box."""

    x: float
    baseline: float
    cap_mm: float
    text: str


@dataclass(frozen=True)
class SymbolGeometry:
    """All of a symbol in its 10 x 10 box. ``anchors`` are the points where a wire may end."""

    name: str
    lines: tuple[SymbolLine, ...]
    circles: tuple[SymbolCircle, ...]
    texts: tuple[SymbolText, ...]
    anchors: tuple[tuple[str, Point], ...]


def read_geometry(sign: Sign) -> SymbolGeometry:
    """Return the plain geometry of a symbol.

    Raises:
        ReferenceDataError: the symbol uses a kind of segment that is not drawn here.
    """
    lines: list[SymbolLine] = []
    circles: list[SymbolCircle] = []
    texts: list[SymbolText] = []
    for segment in sign.segments:
        if isinstance(segment, sd.SegmentCircle):
            centre = _point(segment.center)
            circles.append(SymbolCircle(centre, float(segment.radius), bool(segment.fill)))
        elif isinstance(segment, sd.SegmentText):
            x, baseline = flipped(*segment.xy)
            texts.append(SymbolText(x, baseline, CAP_MM, segment.text))
        else:
            lines.append(_line(segment, sign.declaration.name))
    anchors = tuple(sorted((name, _point(xy)) for name, xy in sign.anchors.items()))
    name = sign.declaration.name
    return SymbolGeometry(name, tuple(lines), tuple(circles), tuple(texts), anchors)


def _point(xy: tuple[float, float]) -> Point:
    x, y = flipped(*xy)
    return Point(round(x, 6), round(y, 6))


def _line(segment: Any, name: str) -> SymbolLine:
    narrow = segment.lw is not None
    if isinstance(segment, sd.SegmentPoly):
        points = tuple(_point(xy) for xy in segment.verts)
        return SymbolLine(points, closed=True, filled=bool(segment.fill), narrow=narrow)
    if isinstance(segment, sd.SegmentArc):
        return SymbolLine(_chords(segment), narrow=narrow)
    if isinstance(segment, sd.Segment):
        points = tuple(_point(xy) for xy in segment.path)
        return SymbolLine(points, dashed=segment.ls == "--", narrow=narrow)
    raise ReferenceDataError(
        f"symbol {name!r} holds a {type(segment).__name__}, which is not drawn"
    )


def _chords(segment: Any) -> tuple[Point, ...]:
    sweep = (segment.theta2 - segment.theta1) % 360
    steps = max(2, math.ceil(sweep / CHORD_DEG))
    (cx, cy), radius = segment.center, segment.width / 2
    angles = [math.radians(segment.theta1 + sweep * step / steps) for step in range(steps + 1)]
    return tuple(_point((cx + radius * math.cos(a), cy + radius * math.sin(a))) for a in angles)
