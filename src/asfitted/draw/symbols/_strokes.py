"""Strokes of a symbol, given in its 10 x 10 box (x right, y DOWN), as schemdraw segments (y up)."""

from __future__ import annotations

import math
from typing import Any

from asfitted.draw.symbols import _schemdraw as sd
from asfitted.fonts import font_size_mm

BOX = 10.0
#: schemdraw line width that marks a narrow stroke (trip links, enclosures); None is the full one.
NARROW = 1.0
#: Capitals inside a symbol, mm on paper: the least height for print (memory of ISO 3098 practice).
CAP_MM = 2.5
POINTS_PER_MM = 72 / 25.4


def flipped(x: float, y: float) -> tuple[float, float]:
    """Return a point of the box in schemdraw's sense (y up), or the other way round."""
    return (x, BOX - y)


def line(*xy: float, dashed: bool = False, narrow: bool = False) -> Any:
    """Return an open polyline through ``x1, y1, x2, y2, ...``."""
    points = [flipped(x, y) for x, y in zip(xy[::2], xy[1::2], strict=True)]
    return sd.Segment(points, ls="--" if dashed else "-", lw=NARROW if narrow else None)


def polygon(*xy: float, filled: bool = False, narrow: bool = False) -> Any:
    """Return a closed polygon through ``x1, y1, x2, y2, ...``."""
    points = [flipped(x, y) for x, y in zip(xy[::2], xy[1::2], strict=True)]
    return sd.SegmentPoly(points, fill="black" if filled else None, lw=NARROW if narrow else None)


def rect(
    x: float,
    y: float,
    width: float,
    height: float,
    *,
    turn_deg: float = 0.0,
    filled: bool = False,
    narrow: bool = False,
) -> Any:
    """Return a rectangle by its top left corner, turned clockwise about its own centre."""
    cx, cy, angle = x + width / 2, y + height / 2, math.radians(turn_deg)
    corners = []
    for dx, dy in ((-1, -1), (1, -1), (1, 1), (-1, 1)):
        u, v = dx * width / 2, dy * height / 2
        corners.append(cx + u * math.cos(angle) - v * math.sin(angle))
        corners.append(cy + u * math.sin(angle) + v * math.cos(angle))
    return polygon(*corners, filled=filled, narrow=narrow)


def circle(x: float, y: float, radius: float, *, filled: bool = False) -> Any:
    """Return a circle."""
    return sd.SegmentCircle(flipped(x, y), radius, fill="black" if filled else None)


def arc(x1: float, y1: float, x_mid: float, y_mid: float, x2: float, y2: float) -> Any:  # noqa: PLR0917  # three points read best in a row
    """Return the arc of a circle from the first point through the middle one to the last."""
    (ax, ay), (bx, by), (cx, cy) = flipped(x1, y1), flipped(x_mid, y_mid), flipped(x2, y2)
    twice_area = 2 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by))
    a2, b2, c2 = ax * ax + ay * ay, bx * bx + by * by, cx * cx + cy * cy
    ox = (a2 * (by - cy) + b2 * (cy - ay) + c2 * (ay - by)) / twice_area
    oy = (a2 * (cx - bx) + b2 * (ax - cx) + c2 * (bx - ax)) / twice_area
    radius = math.dist((ox, oy), (ax, ay))
    first, middle, last = (
        math.degrees(math.atan2(py - oy, px - ox)) for px, py in ((ax, ay), (bx, by), (cx, cy))
    )
    if (middle - first) % 360 > (last - first) % 360:  # schemdraw runs anticlockwise
        first, last = last, first
    return sd.SegmentArc((ox, oy), 2 * radius, 2 * radius, theta1=first, theta2=last)


def letters(x: float, baseline: float, text: str) -> Any:
    """Return letters centred on ``x`` that stand on ``baseline``, at the height of ``CAP_MM``."""
    return sd.SegmentText(
        flipped(x, baseline),
        text,
        align=("center", "bottom"),
        fontsize=font_size_mm(CAP_MM) * POINTS_PER_MM,
    )


def arrow_head(
    x_from: float, y_from: float, x_tip: float, y_tip: float, *, length: float = 1.5
) -> Any:
    """Return a solid arrowhead at the tip of a stroke that comes from the first point."""
    reach = math.hypot(x_tip - x_from, y_tip - y_from)
    ux, uy = (x_tip - x_from) / reach, (y_tip - y_from) / reach
    bx, by, half = x_tip - length * ux, y_tip - length * uy, 0.3 * length
    return polygon(
        x_tip, y_tip, bx - half * uy, by + half * ux, bx + half * uy, by - half * ux, filled=True
    )
