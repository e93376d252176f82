"""Where figures and blocks of a detail sheet stand: several ways are tried, the evenest is kept."""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.details.blocks import LEAST_MM
from asfitted.layout.elevation.free_boxes import without

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.layout.details.blocks import Block
    from asfitted.layout.details.figure import Figure

GAP = 6.0
TITLE_GAP_MM = 3.0
MOST_SPOTS = 4  # places tried for each block
SHARES = (1.0, 0.67, 0.5, 0.34)  # of the width of a free place that a block may take
LOST = 0.2  # what a block with nothing at its left counts
BALANCE = 0.5  # what being off the middle counts beside the largest void


@dataclass(frozen=True)
class Arrangement:
    """The corner of every figure, and the box of every block."""

    figures: tuple[Point, ...]
    blocks: tuple[Box, ...]
    badness: float


def arranged(
    figures: Sequence[Figure], blocks: Sequence[Block], room: Box, title: Box
) -> Arrangement | None:
    """Return the evenest arrangement found, None where something finds no room.

    Args:
        figures: in reading order.
        blocks: the most important first.
        room: what of the sheet may be used.
        title: the title block, which lies in a corner of it.
    """
    free = without((room,), title.grown(TITLE_GAP_MM))
    best: Arrangement | None = None
    for places in dict.fromkeys((_in_rows(figures, free), _in_cells(figures, free, room))):
        if places is None:
            continue
        taken = [_box(f, at) for f, at in zip(figures, places, strict=True)]
        left = free
        for box in taken:
            left = without(left, box.grown(GAP))
        for spots in _fillings(blocks, left):
            badness = _badness(taken, spots, free, room)
            if best is None or badness < best.badness - 1e-9:
                best = Arrangement(places, spots, badness)
    return best


def _box(figure: Figure, at: Point) -> Box:
    return Box(at.x, at.y, at.x + figure.width_mm, at.y + figure.height_mm)


def _in_rows(figures: Sequence[Figure], free: tuple[Box, ...]) -> tuple[Point, ...] | None:
    """Return each figure at the highest and leftmost place that is left."""
    places = []
    for figure in figures:
        fits = [
            b
            for b in free
            if figure.width_mm <= b.width + 1e-6 and figure.height_mm <= b.height + 1e-6
        ]
        if not fits:
            return None
        spot = min(fits, key=lambda b: (b.y0, b.x0))
        places.append(Point(spot.x0, spot.y0))
        free = without(free, _box(figure, places[-1]).grown(GAP))
    return tuple(places)


def _in_cells(
    figures: Sequence[Figure], free: tuple[Box, ...], room: Box
) -> tuple[Point, ...] | None:
    """Return the figures in rows that go from margin to margin, with equal pitch or equal gaps."""
    places = _in_rows(figures, free)
    if places is None:
        return None
    spread = list(places)
    rows: dict[float, list[int]] = {}
    for i, at in enumerate(places):
        rows.setdefault(at.y, []).append(i)
    for row in rows.values():
        cell = room.width / len(row)
        widths = [figures[i].width_mm for i in row]
        gap = (room.width - sum(widths)) / max(1, len(row) - 1)
        x = room.x0
        for n, i in enumerate(row):
            left = room.x0 + n * cell if max(widths) + GAP <= cell else x
            spread[i] = Point(left, places[i].y)
            x += figures[i].width_mm + gap
    boxes = [_box(f, at) for f, at in zip(figures, spread, strict=True)]
    is_free = all(any(_holds(f, box) for f in free) for box in boxes)
    apart = not any(a.meets(b) for a, b in itertools.combinations(boxes, 2))
    return tuple(spread) if is_free and apart else None


def _holds(free: Box, box: Box) -> bool:
    return free.grown(1e-6).holds(box)


def _fillings(blocks: Sequence[Block], free: tuple[Box, ...]) -> Iterator[tuple[Box, ...]]:
    """Yield boxes for all blocks, in every way that the best places of each allow."""
    if not blocks:
        yield ()
        return
    for spot in _spots(blocks[0], free):
        left = without(free, spot.grown(GAP))
        for rest in _fillings(blocks[1:], left):
            yield (spot, *rest)


def _spots(block: Block, free: tuple[Box, ...]) -> list[Box]:
    """Return the places for a block that take least room: as wide as may be, or a share of it."""
    found = set()
    for box, share in itertools.product(free, SHARES):
        width = box.width if share == 1.0 else math.floor(box.width * share - GAP)
        if width < LEAST_MM:
            continue
        height = block.height_mm(width)
        if height <= box.height + 1e-6:
            found.add((box.x0, box.y0, box.x0 + width, box.y0 + height))
    boxes = [Box(*corners) for corners in sorted(found)]
    boxes.sort(key=lambda b: (round(b.width * b.height / 400.0), b.y0, b.x0))
    return boxes[:MOST_SPOTS]


def _badness(
    figures: Sequence[Box], spots: Sequence[Box], free: tuple[Box, ...], room: Box
) -> float:
    """Return the share of the largest void, how far the middle is off, and what stands lost."""
    taken = (*figures, *spots)
    left = free
    for box in taken:
        left = without(left, box)
    area = room.width * room.height
    void = max((b.width * b.height for b in left), default=0.0) / area
    weight = sum(b.width * b.height for b in taken)
    x = sum(b.centre.x * b.width * b.height for b in taken) / weight
    y = sum(b.centre.y * b.width * b.height for b in taken) / weight
    middle = room.centre
    off = abs(x - middle.x) / room.width + abs(y - middle.y) / room.height
    lost = sum(not _is_joined(box, taken, room) for box in spots)
    return void + BALANCE * off + LOST * lost


def _is_joined(box: Box, taken: Sequence[Box], room: Box) -> bool:
    """Tell whether a block stands at the margin or beside something."""
    if box.x0 - room.x0 < 1.0:
        return True
    beside = (o for o in taken if o.y0 < box.y1 and box.y0 < o.y1)
    return any(0.0 <= box.x0 - other.x1 <= GAP + 1.0 for other in beside)
