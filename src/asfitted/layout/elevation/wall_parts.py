"""Where a wall too long for its sheet is cut: match lines clear of everything on the wall."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.layout.elevation.shown_part import part_of
from asfitted.layout.elevation.window import Edge, Window

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.layout.elevation.wall_content import WallContent

STEP_MM = 100.0  # match lines stand at whole decimetres
CLEAR_MM = 150.0
SLACK = 0.9  # parts are planned so much shorter than the sheet allows, to have a choice
THROUGH_THING, THROUGH_OPENING = 1e6, 1e5


def parts_of(content: WallContent, most_mm: float, first_mark: int) -> tuple[WallContent, ...]:
    """Return a wall as parts of at most ``most_mm``, cut at match lines M1, M2 and so on.

    Args:
        content: the whole wall.
        most_mm: greatest length of a part, mm of the building.
        first_mark: number of the first match line; marks are unique in the job.
    """
    length = content.wall.length_mm
    if length <= most_mm:
        return (content,)
    cuts = _cuts(content, most_mm)
    ends = [0.0, *cuts, length]
    count = len(ends) - 1
    keys = [content.key, *(f"{content.key}/{n}" for n in range(2, count + 1))]
    parts = []
    for n in range(count):
        left, right = content.window.left, content.window.right
        if n:
            left = Edge("match", f"M{first_mark + n - 1}", keys[n - 1])
        if n < count - 1:
            right = Edge("match", f"M{first_mark + n}", keys[n + 1])
        window = Window(ends[n], ends[n + 1], 0.0, content.wall.height_mm, left, right)
        parts.append(replace(part_of(content, window, keys[n]), part=(n + 1, count)))
    return tuple(parts)


def _cuts(content: WallContent, most_mm: float) -> list[float]:
    """Return where to cut: near equal parts, each no longer than allowed, clear of things."""
    length = content.wall.length_mm
    count = max(2, math.ceil(length / (most_mm * SLACK)))
    taken = taken_on(content)
    cuts: list[float] = []
    at = 0.0
    for n in range(1, count):
        ideal = round(at + (length - at) / (count - n + 1), 3)
        high = at + most_mm
        low = max(at + STEP_MM, length - (count - n) * most_mm)
        at = best_cut(ideal, low, min(high, length - STEP_MM), taken)
        cuts.append(at)
    return cuts


def best_cut(
    ideal: float, low: float, high: float, taken: Sequence[tuple[float, float, float]]
) -> float:
    """Return the place nearest to the ideal one, between two limits, that cuts through least."""
    first, last = math.ceil(low / STEP_MM), math.floor(high / STEP_MM)
    places = [k * STEP_MM for k in range(first, last + 1)] or [(low + high) / 2]
    return min(
        places,
        key=lambda x: (sum(w for a, b, w in taken if a < x < b) + abs(x - ideal), x),
    )


def taken_on(content: WallContent) -> list[tuple[float, float, float]]:
    """Return what a cut should not run through, with what it costs to do so."""
    return list(_taken(content))


def _taken(content: WallContent) -> Iterator[tuple[float, float, float]]:
    for thing in content.things:
        half = thing.width_mm / 2 + CLEAR_MM
        yield thing.at.along - half, thing.at.along + half, THROUGH_THING
    places = [p.start.along for p in content.pieces if not p.is_level]
    places += [c.at.along for c in content.crossings]
    places += [p.at.along for p in content.passages]
    places += [d.at.along for d in content.declared]
    places += [s.start.along for s in content.stretches if s.is_upright or s.way == "off-wall"]
    for along in places:
        yield along - CLEAR_MM, along + CLEAR_MM, THROUGH_THING
    for opening in content.wall.openings:
        end = opening.from_mm + opening.width_mm
        yield opening.from_mm - CLEAR_MM, end + CLEAR_MM, THROUGH_OPENING
