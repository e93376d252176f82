"""What a cloud or a triangle may not touch: words and signs; and what it should not: lines."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from asfitted.geometry import Box
from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Circle, Path, Picture, Text

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.geometry import Point
    from asfitted.layout.sheet_layout import Item, Primitive

DOT_MM = 1.0


def ink_box(part: Primitive) -> Box:
    """Return the box round the ink of one primitive, mm; of a sign its whole box."""
    if isinstance(part, Text):
        return box_of(part)
    if isinstance(part, Path):
        xs, ys = [p.x for p in part.points], [p.y for p in part.points]
        return Box(min(xs), min(ys), max(xs), max(ys))
    if isinstance(part, Circle):
        return Box(*part.centre, *part.centre).grown(part.radius_mm)
    if isinstance(part, Picture):
        return part.box
    return Box(part.at.x, part.at.y, part.at.x + part.size_mm, part.at.y + part.size_mm)


def item_box(item: Item) -> Box:
    """Return the box round all ink of an item, mm."""
    boxes = [ink_box(part) for part in item.parts]
    box = boxes[0]
    for other in boxes[1:]:
        box = box.joined(other)
    return box


def solid_boxes(items: Iterable[Item]) -> list[Box]:
    """Return the boxes of all words, signs and pictures, mm."""
    return [
        ink_box(part)
        for item in items
        for part in item.parts
        if not isinstance(part, Path | Circle)
    ]


def round_boxes(items: Iterable[Item]) -> list[Box]:
    """Return the boxes of circles that are more than a dot, mm."""
    circles = (p for item in items for p in item.parts if isinstance(p, Circle))
    return [ink_box(circle) for circle in circles if circle.radius_mm > DOT_MM]


def line_pieces(items: Iterable[Item]) -> list[tuple[Point, Point]]:
    """Return the straight pieces of all lines but the frame and the rules of tables."""
    pieces: list[tuple[Point, Point]] = []
    for item in items:
        if item.kind == "frame" or item.ident.endswith(":rules"):
            continue
        for part in item.parts:
            if isinstance(part, Path) and part.stroke is not None:
                ring = (*part.points, part.points[0]) if part.closed else part.points
                pieces += pairwise(ring)
    return pieces
