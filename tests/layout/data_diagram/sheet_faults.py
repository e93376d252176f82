"""Faults of a laid-out sheet, found on its numbers: words on words or ink, crossings."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

from asfitted.draw.item_boxes import part_box
from asfitted.draw.placed_symbol import placed_strokes
from asfitted.fonts import text_width_mm
from asfitted.geometry import Box
from asfitted.layout.frame import usable_box
from asfitted.layout.sheet_layout import Path, SymbolUse, Text, text_box
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.geometry import Point
    from asfitted.layout.sheet_layout import Item, Paper, Primitive

SHRINK = 0.25


def faults(items: tuple[Item, ...], paper: Paper) -> list[str]:
    """Return what is wrong with the items of a sheet, in words."""
    return [*_words(items), *_edges(items, paper), *_crossings(items), *_names(items)]


def _texts(items: tuple[Item, ...]) -> list[tuple[Box, str]]:
    return [
        (text_box(p, text_width_mm(p.text, p.cap_mm, bold=p.bold)).grown(-SHRINK), p.text)
        for item in items
        for p in item.parts
        if isinstance(p, Text)
    ]


def _words(items: tuple[Item, ...]) -> Iterator[str]:
    """Yield words that lie on other words, or that a line or a symbol runs through."""
    texts = sorted(_texts(items), key=lambda found: found[0].x0)
    for i, (box, words) in enumerate(texts):
        for other, other_words in texts[i + 1 :]:
            if other.x0 >= box.x1:
                break
            if box.meets(other):
                yield f"{words!r} on {other_words!r}"
    for item in items:
        for part in item.parts:
            for a, b in _strokes(part):
                for box, words in texts:
                    if _runs_through(a, b, box):
                        yield f"a line of {item.ident} through {words!r}"


def _strokes(part: Primitive) -> Iterator[tuple[Point, Point]]:
    """Yield the straight pieces of what is inked, symbols included."""
    inked = placed_strokes(part) if isinstance(part, SymbolUse) else (part,)
    for one in inked:
        if isinstance(one, Path) and one.stroke:
            yield from segments(one)


def segments(path: Path) -> list[tuple[Point, Point]]:
    """Return the straight pieces of a path."""
    points = (*path.points, path.points[0]) if path.closed else path.points
    return list(itertools.pairwise(points))


def _runs_through(a: Point, b: Point, box: Box) -> bool:
    """Tell whether a straight piece passes through a box (Liang and Barsky's clipping)."""
    low, high = 0.0, 1.0
    for start, step, least, most in (
        (a.x, b.x - a.x, box.x0, box.x1),
        (a.y, b.y - a.y, box.y0, box.y1),
    ):
        if abs(step) < 1e-9:
            if not least < start < most:
                return False
            continue
        near, far = sorted(((least - start) / step, (most - start) / step))
        low, high = max(low, near), min(high, far)
    return low < high


def _edges(items: tuple[Item, ...], paper: Paper) -> Iterator[str]:
    """Yield what stands outside the usable area or in the title block."""
    area, block = usable_box(paper).grown(0.6), title_block_box(paper)
    for item in items:
        for part in item.parts:
            box = part_box(part)
            if not area.holds(box):
                yield f"{item.ident} outside at {box}"
            if box.meets(block):
                yield f"{item.ident} in the title block at {box}"


def _crossings(items: tuple[Item, ...]) -> Iterator[str]:
    """Yield wires of different nets that meet anywhere."""
    wires = [
        (Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)), item)
        for item in items
        if item.kind == "wire"
        for part in item.parts
        if isinstance(part, Path)
        for a, b in segments(part)
    ]
    for (one, item), (two, other) in itertools.combinations(wires, 2):
        apart = one.x1 < two.x0 or two.x1 < one.x0 or one.y1 < two.y0 or two.y1 < one.y0
        if item.net != other.net and not apart:
            yield f"{item.ident} meets {other.ident}"


def _names(items: tuple[Item, ...]) -> Iterator[str]:
    seen: set[str] = set()
    for item in items:
        if item.ident in seen:
            yield f"two items are called {item.ident}"
        seen.add(item.ident)
        if item.kind == "wire" and not item.net:
            yield f"{item.ident} has no net"
