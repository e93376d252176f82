"""Lines, symbols and rings that run through words on a laid-out sheet, found on its numbers."""

from __future__ import annotations

import itertools
import math
from collections import defaultdict
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from asfitted.draw.item_boxes import part_box
from asfitted.draw.placed_symbol import placed_strokes
from asfitted.geometry import Box, Point
from asfitted.layout.free_room import line_meets_box
from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Circle, Path, SymbolUse, Text

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.sheet_layout import Item, Primitive

SHRINK_MM = 0.25  # words may be touched at the very edge of their box
CELL_MM = 20.0
RING_PIECES = 24  # a ring is taken as so many straight pieces


@dataclass
class _Words:
    """Texts of a sheet by cell, each with how much was drawn when it was last painted over.

    ``item`` names the item of each: the painted triangle or ring round its own code is no fault.
    """

    by_cell: dict[tuple[int, int], list[int]] = field(default_factory=lambda: defaultdict(list))
    boxes: list[Box] = field(default_factory=list)
    texts: list[str] = field(default_factory=list)
    covered_at: list[int] = field(default_factory=list)
    item: list[str] = field(default_factory=list)

    def add(self, text: Text, item: str, covered_at: int) -> None:
        box = box_of(text).grown(-SHRINK_MM)
        for cell in _cells(box):
            self.by_cell[cell].append(len(self.boxes))
        self.boxes.append(box)
        self.texts.append(text.text)
        self.covered_at.append(covered_at)
        self.item.append(item)

    def met_by(self, a: Point, b: Point, order: int, framed: str) -> Iterator[str]:
        """Yield the texts that a straight piece of ink runs through."""
        hull = Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y))
        near = {i for cell in _cells(hull) for i in self.by_cell.get(cell, ())}
        for i in sorted(near):
            if order < self.covered_at[i] or self.item[i] == framed:
                continue
            if line_meets_box(a, b, self.boxes[i]):
                yield self.texts[i]


def ink_on_texts(items: tuple[Item, ...]) -> list[str]:
    """Return each text that ink of an item runs through, unless it was painted over before."""
    parts = [(item, part) for item in items for part in item.parts]
    covers = [
        (order, part_box(part))
        for order, (_, part) in enumerate(parts)
        if isinstance(part, Path | Circle) and part.fill is not None
    ]
    words = _Words()
    for order, (item, part) in enumerate(parts):
        if isinstance(part, Text):
            words.add(part, item.ident, _covered_at(part, order, covers))
    found: dict[str, None] = {}
    for order, (item, part) in enumerate(parts):
        is_frame = isinstance(part, Path | Circle) and part.fill is not None
        for a, b in strokes(part):
            for text in words.met_by(a, b, order, item.ident if is_frame else ""):
                found[f"{item.ident} through {text!r}"] = None
    return list(found)


def _covered_at(text: Text, order: int, covers: list[tuple[int, Box]]) -> int:
    """Return from which part on ink shows behind a text: after the last fill that holds it."""
    box = box_of(text).grown(-SHRINK_MM)
    return max((at for at, cover in covers if at < order and cover.holds(box)), default=0)


def strokes(part: Primitive) -> Iterator[tuple[Point, Point]]:
    """Yield the straight pieces of what is inked, symbols and rings included."""
    inked = placed_strokes(part) if isinstance(part, SymbolUse) else (part,)
    for one in inked:
        if isinstance(one, Path) and one.stroke:
            yield from segments(one)
        elif isinstance(one, Circle) and one.stroke:
            yield from segments(_ring(one))


def segments(path: Path) -> list[tuple[Point, Point]]:
    """Return the straight pieces of a path."""
    points = (*path.points, path.points[0]) if path.closed else path.points
    return list(itertools.pairwise(points))


def _ring(circle: Circle) -> Path:
    turns = (2 * math.pi * i / RING_PIECES for i in range(RING_PIECES))
    points = (
        circle.centre.moved(circle.radius_mm * math.cos(t), circle.radius_mm * math.sin(t))
        for t in turns
    )
    return Path(tuple(points), circle.stroke, closed=True)


def _cells(box: Box) -> Iterator[tuple[int, int]]:
    for i in range(math.floor(box.x0 / CELL_MM), math.floor(box.x1 / CELL_MM) + 1):
        for j in range(math.floor(box.y0 / CELL_MM), math.floor(box.y1 / CELL_MM) + 1):
            yield i, j
