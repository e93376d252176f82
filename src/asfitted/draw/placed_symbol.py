"""A symbol at its size on paper, and where its strokes and letters come to lie on the sheet."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

from asfitted.draw.symbols import SymbolLine, geometry
from asfitted.geometry import Point
from asfitted.layout.sheet_layout import Circle, Path, Stroke, Text

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SymbolUse

#: Narrow strokes inside a symbol: the next but one width down the series, and never under 0.18 mm.
NARROW_RATIO = 1.4
LEAST_WIDTH_MM = 0.18
#: Dash and gap of a trip link in the 10 x 10 box. Each leg is divided afresh so that it begins and
#: ends with a dash: the dashes then meet at every corner.
DASH, GAP = 1.1, 0.6


@dataclass(frozen=True)
class SizedSymbol:
    """The strokes of a symbol in mm from the top left corner of its box, before turning."""

    paths: tuple[Path, ...]
    circles: tuple[Circle, ...]


@cache
def sized_symbol(name: str, size_mm: float, width_mm: float) -> SizedSymbol:
    """Return a symbol scaled to its size; strokes keep ``width_mm`` whatever the size.

    Raises:
        OutputError: there is no such symbol.
    """
    shape, scale = geometry(name), size_mm / 10
    full = Stroke(width_mm)
    narrow = Stroke(max(LEAST_WIDTH_MM, round(width_mm / NARROW_RATIO, 2)))
    paths = tuple(
        Path(
            tuple(Point(p.x * scale, p.y * scale) for p in points),
            None if line.filled else narrow if line.narrow else full,  # a solid keeps its outline
            line.closed,
            "black" if line.filled else None,
        )
        for line in shape.lines
        for points in _inked(line)
    )
    circles = tuple(
        Circle(
            Point(ring.centre.x * scale, ring.centre.y * scale),
            ring.radius * scale,
            None if ring.filled else full,
            "black" if ring.filled else None,
        )
        for ring in shape.circles
    )
    return SizedSymbol(paths, circles)


def _inked(line: SymbolLine) -> list[tuple[Point, ...]]:
    """Return the pieces of a line that carry ink."""
    if not line.dashed:
        return [line.points]
    pieces: list[tuple[Point, ...]] = []
    for start, end in zip(line.points, line.points[1:], strict=False):
        length = math.dist(start, end)
        count = max(1, round((length + GAP) / (DASH + GAP)))
        dash = (length - (count - 1) * GAP) / count
        for index in range(count):
            t0 = index * (dash + GAP) / length
            t1 = t0 + dash / length
            piece = (_between(start, end, t0), _between(start, end, t1))
            if index == 0 and pieces:  # the dash runs round the corner
                pieces[-1] = (*pieces[-1], piece[1])
            else:
                pieces.append(piece)
    return pieces


def _between(start: Point, end: Point, share: float) -> Point:
    return Point(start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share)


def to_sheet(use: SymbolUse, point: Point) -> Point:
    """Return where a point (mm from the corner of the unturned box) lies on the sheet."""
    half = use.size_mm / 2
    dx, dy = point.x - half, point.y - half
    if use.mirrored:
        dx = -dx
    for _ in range(use.turn // 90):
        dx, dy = -dy, dx  # a quarter turn clockwise on paper
    return Point(use.at.x + half + dx, use.at.y + half + dy)


def symbol_texts(use: SymbolUse) -> tuple[Text, ...]:
    """Return the letters of a symbol on the sheet: always upright, at their own height.

    Letters keep their height and pitch at any size of the symbol, since smaller ones could not be
    read. A symbol with letters therefore wants its full 10 mm. Lines of letters turn as one block.
    """
    texts = geometry(use.name).texts
    if not texts:
        return ()
    middles = [Point(text.x, text.baseline - text.cap_mm / 2) for text in texts]
    xs, ys = [p.x for p in middles], [p.y for p in middles]
    centre = Point((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    scale = use.size_mm / 10
    at = to_sheet(use, Point(centre.x * scale, centre.y * scale))
    return tuple(
        Text(
            at.moved(middle.x - centre.x, middle.y - centre.y + text.cap_mm / 2),
            text.text,
            text.cap_mm,
            anchor="middle",
        )
        for text, middle in zip(texts, middles, strict=True)
    )


def placed_strokes(use: SymbolUse) -> tuple[Path | Circle, ...]:
    """Return the strokes of a symbol where they lie on the sheet."""
    sized = sized_symbol(use.name, use.size_mm, use.width_mm)
    paths = (
        Path(tuple(to_sheet(use, p) for p in path.points), path.stroke, path.closed, path.fill)
        for path in sized.paths
    )
    circles = (
        Circle(to_sheet(use, ring.centre), ring.radius_mm, ring.stroke, ring.fill)
        for ring in sized.circles
    )
    return (*paths, *circles)
