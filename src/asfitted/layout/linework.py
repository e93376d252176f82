"""Line widths and ready-made paths. One group of widths for each paper size (ISO 128)."""

from __future__ import annotations

from dataclasses import dataclass

from asfitted.geometry import Box, Point
from asfitted.layout.sheet_layout import Paper, Path, Pattern, Stroke, Tone


@dataclass(frozen=True)
class Widths:
    """Line widths in mm: wide is at least twice narrow; extra-wide for busbars and cut outlines."""

    narrow: float
    wide: float
    extra_wide: float
    symbol: float


_A3 = Widths(narrow=0.25, wide=0.5, extra_wide=1.0, symbol=0.35)
_A4 = Widths(narrow=0.18, wide=0.35, extra_wide=0.7, symbol=0.25)


def widths_for(paper: Paper) -> Widths:
    """Return the group of line widths for a paper size."""
    return _A3 if paper == "A3" else _A4


def polyline(
    *points: tuple[float, float],
    width_mm: float,
    pattern: Pattern = "continuous",
    tone: Tone = "black",
) -> Path:
    """Return an open line through the points."""
    return Path(tuple(Point(*p) for p in points), Stroke(width_mm, pattern, tone))


def rectangle(
    box: Box,
    *,
    width_mm: float | None,
    pattern: Pattern = "continuous",
    tone: Tone = "black",
    fill: Tone | None = None,
) -> Path:
    """Return a closed rectangle; ``width_mm`` None leaves the edge unlined."""
    points = (
        Point(box.x0, box.y0),
        Point(box.x1, box.y0),
        Point(box.x1, box.y1),
        Point(box.x0, box.y1),
    )
    stroke = None if width_mm is None else Stroke(width_mm, pattern, tone)
    return Path(points, stroke, closed=True, fill=fill)
