"""The greatest free rectangles of a sheet, and blocks placed in them one after another."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box

if TYPE_CHECKING:
    from collections.abc import Iterable

LEAST_MM = 10.0


def without(free: Iterable[Box], taken: Box) -> tuple[Box, ...]:
    """Return the greatest rectangles that are left of some when one box is taken from them."""
    left: list[Box] = []
    for box in free:
        if not box.meets(taken):
            left.append(box)
            continue
        left += [
            Box(box.x0, box.y0, taken.x0, box.y1),
            Box(taken.x1, box.y0, box.x1, box.y1),
            Box(box.x0, box.y0, box.x1, taken.y0),
            Box(box.x0, taken.y1, box.x1, box.y1),
        ]
    return _greatest(b for b in left if b.width >= LEAST_MM and b.height >= LEAST_MM)


def _greatest(boxes: Iterable[Box]) -> tuple[Box, ...]:
    """Return the boxes that lie in no other, from the top left."""
    every = sorted(set(boxes), key=lambda b: (b.y0, b.x0, -b.width, -b.height))
    return tuple(b for b in every if not any(o is not b and o.holds(b) for o in every))


def grown_right_and_down(box: Box, gap_x: float, gap_y: float) -> Box:
    """Return a box with a gap to what stands right of it and below it."""
    return Box(box.x0, box.y0, box.x1 + gap_x, box.y1 + gap_y)
