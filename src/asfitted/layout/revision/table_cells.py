"""Cells of tables: a triangle stands in a cell of the row that changed, never over another's."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box
from asfitted.layout.lettering import BODY
from asfitted.layout.revision.ink import item_box
from asfitted.layout.sheet_layout import Path

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from asfitted.layout.sheet_layout import Item

RULES = ":rules"
OFF_RULE_MM = 0.35  # between a triangle and the rules of its cell
OFF_WORD_MM = 0.6
LEAST_MM = 4.4  # a lower triangle holds no code
FLAT_FOOT_MM = 0.55  # from the base of a low triangle to the baseline of its code
LOW_MM = 4.6  # as in a row of one line
TALLEST_MM = 6.9  # no higher than a triangle elsewhere


@dataclass(frozen=True)
class Grid:
    """The rules of a table: its box, and where its rows and columns end, mm."""

    box: Box
    xs: tuple[float, ...]
    ys: tuple[float, ...]

    def rows_of(self, core: Box) -> tuple[tuple[float, float], ...]:
        """Return top and foot of the rows that a box lies in."""
        rows = pairwise(self.ys)
        return tuple((a, b) for a, b in rows if a < core.y1 and core.y0 < b)


def grids(items: Iterable[Item]) -> tuple[Grid, ...]:
    """Return the tables of a sheet by their rules."""
    found = []
    for item in items:
        if not item.ident.endswith(RULES):
            continue
        box = item_box(item)
        xs, ys = {box.x0, box.x1}, {box.y0, box.y1}
        for part in item.parts:
            if isinstance(part, Path) and not part.closed and len(part.points) == 2:
                a, b = part.points
                xs |= {a.x} if a.x == b.x else set()
                ys |= {a.y} if a.y == b.y else set()
        found.append(Grid(box, tuple(sorted(xs)), tuple(sorted(ys))))
    return tuple(found)


def in_own_cell(
    core: Box, code: str, tables: Sequence[Grid], words: Sequence[Box], others: Sequence[Box]
) -> Box | None:
    """Return the box of a triangle in a free part of a cell of the rows of ``core``, or None.

    Args:
        core: what changed; it lies in a table or has no such place.
        code: what the triangle holds.
        tables: the tables of the sheet.
        words: boxes of all words and signs.
        others: boxes that are taken, such as those of other triangles.
    """
    grid = next((g for g in tables if g.box.grown(0.1).holds(core)), None)
    if grid is None:
        return None
    spots = [
        spot
        for top, foot in grid.rows_of(core)
        for left, right in pairwise(grid.xs)
        for spot in _spots(Box(left, top, right, foot), code, words)
        if not any(spot.meets(other) for other in others)
    ]
    middle = core.y0
    return min(spots, key=lambda b: (abs(b.y0 - middle) > BODY * 3, -b.x1), default=None)


def _spots(cell: Box, code: str, words: Sequence[Box]) -> list[Box]:
    """Return the places of a cell that no word takes, in its middle first, then under its words."""
    room = cell.grown(-OFF_RULE_MM)
    tall = min(room.height, TALLEST_MM)
    found = []
    for height, foot in ((tall, room.centre.y + tall / 2), (LOW_MM, room.y1)):
        if height < LEAST_MM:
            continue
        side = least_side_mm(code, height)
        for x in (room.x1 - side, room.centre.x - side / 2, room.x0):
            box = Box(x, foot - height, x + side, foot)
            if room.grown(0.01).holds(box) and not _meets(box, words):
                found.append(box)
    return found


def _meets(box: Box, words: Sequence[Box]) -> bool:
    grown = box.grown(OFF_WORD_MM)
    return any(grown.meets(Box(w.x0, w.y0 + OFF_WORD_MM, w.x1, w.y1 - OFF_WORD_MM)) for w in words)


def least_side_mm(code: str, height_mm: float) -> float:
    """Return the least base of a triangle so high that its code in 2.5 mm letters lies inside."""
    free = 1.0 - (FLAT_FOOT_MM + BODY * 1.05) / height_mm
    return max(height_mm * 2 / 3**0.5, (text_width_mm(code, BODY, bold=True) + 0.4) / free)
