"""Triangles with the code of the revision, one to each cloud, where no word stands."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.free_room import line_meets_box
from asfitted.layout.lettering import BODY
from asfitted.layout.linework import polyline
from asfitted.layout.revision.table_cells import FLAT_FOOT_MM, in_own_cell
from asfitted.layout.sheet_layout import Path, Stroke, Text

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.layout.revision.clouds import Cloud
    from asfitted.layout.revision.table_cells import Grid
    from asfitted.layout.sheet_layout import Primitive

LEAST_SIDE_MM = 8.0
FOOT_MM = 0.75  # from the base of the triangle to the baseline of its code
LOW_MM = 6.5  # a triangle so low stands in a row of a table
CLEAR_MM = 0.5
STEP_MM = 2.0
FARTHEST_MM = 60.0
ROOT3 = math.sqrt(3.0)


@dataclass(frozen=True)
class Surroundings:
    """What a triangle and its leader look out for: words and signs, lines, and the sheet's edge."""

    solid: tuple[Box, ...]
    lines: tuple[tuple[Point, Point], ...]
    limits: Box
    tables: tuple[Grid, ...] = ()


def short_code(revision: str) -> str:
    """Return what a triangle holds: "02" of P02, "B" of B."""
    if revision.endswith("-S"):
        return "S"  # marked up on site
    match = re.fullmatch(r"[A-Za-z]+(\d+(?:\.\d+)?)", revision.strip())
    return match[1] if match else revision.strip()[:3]


def side_mm(code: str) -> float:
    """Return the side of a triangle that holds a code in 2.5 mm letters, mm."""
    top = FOOT_MM + BODY + 0.2
    needed = text_width_mm(code, BODY, bold=True) + 0.6
    return max(LEAST_SIDE_MM, math.ceil((needed + top * 2 / ROOT3) * 2) / 2)


def triangle(box: Box, code: str, width_mm: float) -> tuple[Primitive, ...]:
    """Return a triangle that stands on the foot of its box, with its code."""
    middle = box.centre.x
    points = (Point(middle, box.y0), Point(box.x1, box.y1), Point(box.x0, box.y1))
    foot = FOOT_MM if box.height > LOW_MM else FLAT_FOOT_MM
    text = Text(Point(middle, box.y1 - foot), code, BODY, anchor="middle", bold=True)
    return Path(points, Stroke(width_mm), closed=True, fill="white"), text


def place_triangle(
    cloud: Cloud, code: str, around: Surroundings, others: Sequence[Box]
) -> tuple[Box, tuple[Point, Point] | None]:
    """Return the box of the triangle of a cloud, and its leader where it stands apart.

    In a table it stands in a free part of a cell of its own row. Else nearest first; upper right
    before the rest; off lines where that costs no more than 6 mm; over a table only as a last way.
    """
    own = in_own_cell(cloud.core, code, around.tables, around.solid, others)
    if own is not None:
        return own, None
    bare = replace(around, tables=())
    place = _beside(cloud, code, around, others) or _beside(cloud, code, bare, others)
    if place is not None:
        return place
    # nowhere on the sheet: on the cloud's own corner, over its outline
    side = side_mm(code)
    corner = Point(cloud.outer.x1 - side, cloud.outer.y0)
    return Box(corner.x, corner.y, corner.x + side, corner.y + side * ROOT3 / 2), None


def _beside(
    cloud: Cloud, code: str, around: Surroundings, others: Sequence[Box]
) -> tuple[Box, tuple[Point, Point] | None] | None:
    """Return the best place round a cloud with its leader, None where there is none."""
    best: tuple[float, Box, tuple[Point, Point] | None] | None = None
    for far, box in _spots(cloud, side_mm(code)):
        if best is not None and far > best[0]:
            break
        if not _is_free(box, around, others):
            continue
        leader = _leader(cloud, box, around, others) if far > STEP_MM else None
        if far > STEP_MM and leader is None:
            continue
        cost = far + 3.0 * _lines_met(box, around) + (4.0 if leader else 0.0)
        if best is None or cost < best[0] - 1e-6:
            best = (cost, box, leader)
    return None if best is None else best[1:]


def _spots(cloud: Cloud, side: float) -> Iterator[tuple[float, Box]]:
    """Yield places for a triangle round a cloud, the nearest first, clockwise from upper right."""
    height = side * ROOT3 / 2
    outer = cloud.outer
    far = 0.2
    while far < FARTHEST_MM:
        ring = outer.grown(far)
        xs = _along(ring.x1, ring.x0 - side)
        ys = _along(ring.y0 - height, ring.y1)
        for x in xs:
            yield far, Box(x, ring.y0 - height, x + side, ring.y0)
        for y in ys:
            yield far, Box(ring.x1, y, ring.x1 + side, y + height)
        for x in xs:
            yield far, Box(x, ring.y1, x + side, ring.y1 + height)
        for y in ys:
            yield far, Box(ring.x0 - side, y, ring.x0, y + height)
        far += STEP_MM


def _along(start: float, end: float) -> list[float]:
    count = max(1, math.ceil(abs(end - start) / STEP_MM))
    return [start + (end - start) * n / count for n in range(count + 1)]


def _is_free(box: Box, around: Surroundings, others: Sequence[Box]) -> bool:
    if not around.limits.holds(box):
        return False
    grown = box.grown(CLEAR_MM)
    cells = (table.box for table in around.tables)
    return not any(grown.meets(other) for other in (*around.solid, *others, *cells))


def _lines_met(box: Box, around: Surroundings) -> int:
    return min(4, sum(line_meets_box(a, b, box) for a, b in around.lines))


def _leader(
    cloud: Cloud, box: Box, around: Surroundings, others: Sequence[Box]
) -> tuple[Point, Point] | None:
    """Return a straight line from the cloud to the triangle that crosses no word, or None."""
    outer = cloud.core.grown(cloud.scallop.margin_mm)
    middle = box.centre
    ends = (
        Point(middle.x, box.y0),
        Point(middle.x, box.y1),
        Point(box.x0 + box.width / 4, middle.y),
        Point(box.x1 - box.width / 4, middle.y),
    )
    inside = cloud.core.grown(0.1)
    boxes = [box for box in (*around.solid, *others) if not inside.holds(box)]
    found = []
    for end in ends:
        at = Point(
            min(max(end.x, outer.x0), outer.x1),
            min(max(end.y, outer.y0), outer.y1),
        )
        if math.dist(at, end) > 0.5 and not any(
            line_meets_box(at, end, b.grown(CLEAR_MM)) for b in boxes
        ):
            found.append((math.dist(at, end), at, end))
    if not found:
        return None
    _, at, end = min(found)
    return at, end


def leader_line(leader: tuple[Point, Point], width_mm: float) -> Path:
    """Return the line of a leader."""
    return polyline(*leader, width_mm=width_mm)
