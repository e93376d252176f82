"""What of a sheet is taken, so that a word or a leader can be put where nothing else is."""

from __future__ import annotations

import math
from collections import defaultdict
from dataclasses import dataclass, field

from asfitted.geometry import Box, Point

CELL = 12.0
CLEAR = 0.7  # clear space round every text, mm
SOLID = math.inf  # weight of what no leader may cross
ALONG_MM, ALONG_COST = 3.0, 8.0  # a leader that runs along a line for so long costs so much
THIN_MM = 2.0


Taken = tuple[float, float, float, float, float, Box]  # its four sides, what crossing costs, box


@dataclass
class FreeRoom:
    """Boxes of ink, solid boxes (text, symbols) and leaders already on a part of a sheet, mm.

    Ink may be crossed by a leader where it must, at a cost; solid boxes and other leaders never.
    What is taken is kept by square cells, so that a question looks at its neighbours only.
    """

    limits: Box
    _cells: dict[tuple[int, int], list[Taken]] = field(default_factory=lambda: defaultdict(list))
    _solids: dict[tuple[int, int], list[Taken]] = field(default_factory=lambda: defaultdict(list))
    _inks: dict[tuple[int, int], list[Taken]] = field(default_factory=lambda: defaultdict(list))
    _leaders: list[tuple[Point, Point]] = field(default_factory=list)
    _poor: list[Box] = field(default_factory=list)

    def take_ink(self, box: Box, weight: float = 1.0) -> None:
        """Note a box that holds lines; ``weight`` is what a leader pays to cross it."""
        entry = (box.x0, box.y0, box.x1, box.y1, weight, box)
        sort = self._solids if weight == SOLID else self._inks
        for cell in _cells_of(box):
            self._cells[cell].append(entry)
            sort[cell].append(entry)

    def take_solid(self, box: Box) -> None:
        """Note a box that holds words, a symbol or a thing: no leader may cross it."""
        self.take_ink(box, SOLID)

    def take_line(self, a: Point, b: Point, width_mm: float = 0.5) -> None:
        """Note a straight line, as a row of small boxes where it is oblique."""
        half = width_mm / 2
        oblique = abs(a.x - b.x) > 0.5 and abs(a.y - b.y) > 0.5
        count = max(1, math.ceil(math.dist(a, b) / 2.0)) if oblique else 1
        for i in range(count):
            p, q = _between(a, b, i / count), _between(a, b, (i + 1) / count)
            low, high = Point(min(p.x, q.x), min(p.y, q.y)), Point(max(p.x, q.x), max(p.y, q.y))
            self.take_ink(Box(low.x, low.y, high.x, high.y).grown(half))

    def take_leader(self, a: Point, b: Point) -> None:
        """Note a leader; nothing may cross it or stand on it."""
        self._leaders.append((a, b))

    def take_poor(self, box: Box) -> None:
        """Note a box that is free but belongs to something else, such as the inside of a door."""
        self._poor.append(box)

    def is_poor(self, box: Box) -> bool:
        """Tell whether a box lies in such a place."""
        return any(box.meets(other) for other in self._poor)

    def is_free(self, box: Box, clear: float = CLEAR) -> bool:
        """Tell whether a box lies inside the limits and clear of everything noted."""
        if not self.limits.holds(box):
            return False
        x0, y0, x1, y1 = box.x0 - clear, box.y0 - clear, box.x1 + clear, box.y1 + clear
        cells = self._cells
        rows = range(math.floor(y0 / CELL), math.floor(y1 / CELL) + 1)
        for i in range(math.floor(x0 / CELL), math.floor(x1 / CELL) + 1):
            for j in rows:
                for taken in cells.get((i, j), ()):
                    if taken[0] < x1 and x0 < taken[2] and taken[1] < y1 and y0 < taken[3]:
                        return False
        if not self._leaders:
            return True
        grown = Box(x0, y0, x1, y1)
        return not any(line_meets_box(a, b, grown) for a, b in self._leaders)

    def leader_cost(self, a: Point, b: Point, own: Box) -> float | None:
        """Return the weight of the ink a leader would cross, or None where it may not run.

        Args:
            a: end at the thing.
            b: end at the words.
            own: box of the thing itself, which the leader may touch.
        """
        x0, x1 = (a.x, b.x) if a.x < b.x else (b.x, a.x)
        y0, y1 = (a.y, b.y) if a.y < b.y else (b.y, a.y)
        if not self.limits.holds(Box(x0, y0, x1, y1)):
            return None
        around = (x0 - 0.5, y0 - 0.5, x1 + 0.5, y1 + 0.5)
        mine = own.grown(0.5)
        for *_, box in _near(self._solids, *around):
            if line_meets_box(a, b, box, 0.4) and not mine.holds(box):
                return None
        if any(lines_cross(a, b, c, d) for c, d in self._leaders):
            return None
        cost = 0.0
        for *_, weight, box in _near(self._inks, *around):
            if line_meets_box(a, b, box) and not mine.holds(box):
                cost += weight + (ALONG_COST if _runs_along(a, b, box) else 0.0)
        return cost


def _near(
    cells: dict[tuple[int, int], list[Taken]], x0: float, y0: float, x1: float, y1: float
) -> list[Taken]:
    """Return what of the cells meets a box, each once."""
    seen: dict[int, Taken] = {}
    rows = range(math.floor(y0 / CELL), math.floor(y1 / CELL) + 1)
    for i in range(math.floor(x0 / CELL), math.floor(x1 / CELL) + 1):
        for j in rows:
            for taken in cells.get((i, j), ()):
                if taken[0] < x1 and x0 < taken[2] and taken[1] < y1 and y0 < taken[3]:
                    seen[id(taken)] = taken
    return list(seen.values())


def _runs_along(a: Point, b: Point, box: Box) -> bool:
    """Tell whether a leader lies on a thin line for a good part of its length."""
    if min(box.width, box.height) > THIN_MM:
        return False
    span = part_in_box(a, b, box)
    return span is not None and (span[1] - span[0]) * math.dist(a, b) > ALONG_MM


def _cells_of(box: Box) -> list[tuple[int, int]]:
    columns = range(math.floor(box.x0 / CELL), math.floor(box.x1 / CELL) + 1)
    rows = range(math.floor(box.y0 / CELL), math.floor(box.y1 / CELL) + 1)
    return [(i, j) for i in columns for j in rows]


def _between(a: Point, b: Point, share: float) -> Point:
    return Point(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)


def part_in_box(a: Point, b: Point, box: Box) -> tuple[float, float] | None:
    """Return the shares of the line from a to b at which it enters and leaves a box, or None."""
    return _part_between(a, b, (box.x0, box.y0, box.x1, box.y1))


def _part_between(
    a: Point, b: Point, sides: tuple[float, float, float, float]
) -> tuple[float, float] | None:
    """Return what ``part_in_box`` does; written out, as layouts ask it millions of times."""
    x0, y0, x1, y1 = sides
    low, high = 0.0, 1.0
    ax, ay = a
    dx, dy = b[0] - ax, b[1] - ay
    if abs(dx) < 1e-9:
        if ax <= x0 or ax >= x1:
            return None
    else:
        t0, t1 = (x0 - ax) / dx, (x1 - ax) / dx
        if t0 > t1:
            t0, t1 = t1, t0
        low, high = max(0.0, t0), min(1.0, t1)
        if low >= high:
            return None
    if abs(dy) < 1e-9:
        return None if ay <= y0 or ay >= y1 else (low, high)
    t0, t1 = (y0 - ay) / dy, (y1 - ay) / dy
    if t0 > t1:
        t0, t1 = t1, t0
    low, high = max(low, t0), min(high, t1)
    return None if low >= high else (low, high)


def line_meets_box(a: Point, b: Point, box: Box, clear: float = 0.0) -> bool:
    """Tell whether a straight line from a to b has any point inside a box, or so near to it, mm."""
    x0, x1 = box.x0 - clear, box.x1 + clear
    ax, ay = a
    bx, by = b
    if (ax <= x0 and bx <= x0) or (ax >= x1 and bx >= x1):
        return False
    y0, y1 = box.y0 - clear, box.y1 + clear
    if (ay <= y0 and by <= y0) or (ay >= y1 and by >= y1):
        return False
    if (x0 < ax < x1 and y0 < ay < y1) or (x0 < bx < x1 and y0 < by < y1):
        return True
    return _part_between(a, b, (x0, y0, x1, y1)) is not None


def lines_cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Tell whether two straight lines share a point."""
    if max(a[0], b[0]) < min(c[0], d[0]) or max(c[0], d[0]) < min(a[0], b[0]):
        return False
    if max(a[1], b[1]) < min(c[1], d[1]) or max(c[1], d[1]) < min(a[1], b[1]):
        return False
    return _side(a, b, c) * _side(a, b, d) <= 0 and _side(c, d, a) * _side(c, d, b) <= 0


def _side(p: Point, q: Point, r: Point) -> float:
    return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])


def gap_mm(one: Box, other: Box) -> float:
    """Return the clear distance of two boxes, 0 where they meet."""
    dx = max(0.0, one.x0 - other.x1, other.x0 - one.x1)
    dy = max(0.0, one.y0 - other.y1, other.y0 - one.y1)
    return math.hypot(dx, dy)
