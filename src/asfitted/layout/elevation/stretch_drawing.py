"""Drops and clipped cables on the elevation, side by side where they share a line."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.linework import polyline, widths_for
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.drops_on_wall import Stretch
    from asfitted.layout.elevation.wall_view import WallView
    from asfitted.layout.sheet_layout import Path

W = widths_for("A3")
LANE_MM = 2.4  # centre to centre of lengths that share a line, on paper
INSIDE_MM = 1.0  # lengths side by side keep so far inside the view
PAST_MM = 1.0  # clear of the outline of a thing that a drop passes
BEND_MM = 4.0  # height of the bend back to the thing it goes to
STROKE_EVERY_MM = 6.0  # strokes across a cable that is removed
SAME_LINE_MM = 1.6  # nearer than this on paper two lengths share a line


@dataclass(frozen=True)
class DrawnStretch:
    """A length on the wall with its line on the sheet (top or left end first).

    ``home_x`` is where a drop ends that passes another thing at the side of it.
    """

    stretch: Stretch
    a: Point
    b: Point
    home_x: float | None = None

    @property
    def box(self) -> Box:
        """Box of the line."""
        x0, x1 = sorted((self.a.x, self.b.x))
        y0, y1 = sorted((self.a.y, self.b.y))
        return Box(x0, y0, x1, y1).grown(0.5)


def on_sheet(
    view: WallView, stretches: Sequence[Stretch], things: Sequence[Box] = ()
) -> tuple[DrawnStretch, ...]:
    """Return where each length comes to lie: true positions, spread where lines coincide.

    A drop that would run through one of the ``things`` passes it on the side of the nearer corner.
    """
    drawn: list[DrawnStretch] = []
    lengths = [s for s in stretches if s.way in ("drop", "clipped")]
    for group in _sharing_a_line(view, lengths):
        passing = [s for s in group if _passed_by(view, s, things)]
        drawn += [_past(view, s, things) for s in passing]
        group = [s for s in group if s not in passing]  # noqa: PLW2901  # the rest share the line
        for stretch, off in zip(group, _lanes(view, group), strict=True):
            a, b = _line(view, stretch)
            shift = (off, 0.0) if stretch.is_upright else (0.0, off)
            drawn.append(DrawnStretch(stretch, a.moved(*shift), b.moved(*shift)))
    return tuple(drawn)


def _lanes(view: WallView, group: Sequence[Stretch]) -> list[float]:
    """Return how far each length of a group is moved aside, so that all stay inside the view."""
    if not group:
        return []
    box, is_upright = view.box.grown(-INSIDE_MM), group[0].is_upright
    low, high = (box.x0, box.x1) if is_upright else (box.y0, box.y1)
    lines = [_line(view, s)[0] for s in group]
    true = [p.x if is_upright else p.y for p in lines]
    pitch = min(LANE_MM, max(high - low, 0.0) / max(len(group) - 1, 1))
    offsets = [(lane - (len(group) - 1) / 2) * pitch for lane in range(len(group))]
    if len(group) == 1:
        return offsets
    placed = [at + off for at, off in zip(true, offsets, strict=True)]
    back = max(0.0, low - min(placed)) - max(0.0, max(placed) - high)
    return [min(max(at + back, low), high) - home for at, home in zip(placed, true, strict=True)]


def _passed_by(view: WallView, stretch: Stretch, things: Sequence[Box]) -> list[Box]:
    """Return the outlines that a drop would run through without ending in them."""
    if not stretch.is_upright:
        return []
    a, b = _line(view, stretch)
    return [t for t in things if t.x0 < a.x < t.x1 and a.y < t.y0 and t.y1 < b.y]


def _past(view: WallView, stretch: Stretch, things: Sequence[Box]) -> DrawnStretch:
    a, b = _line(view, stretch)
    passed = _passed_by(view, stretch, things)
    is_right = a.x > view.box.centre.x
    x = max(t.x1 for t in passed) + PAST_MM if is_right else min(t.x0 for t in passed) - PAST_MM
    return DrawnStretch(stretch, Point(x, a.y), Point(x, b.y), a.x)


def draw_stretches(
    drawing: Drawing,
    lengths: Sequence[DrawnStretch],
    outline_of: Outlines,
    *,
    seen_from_outside: bool = False,
) -> None:
    """Draw the lengths. Enclosed ones extra-wide, clipped ones wide; those behind are dashed.

    Existing ones are narrower; removed ones are struck through.
    """
    for i, drawn in enumerate(lengths):
        stretch = drawn.stretch
        width = W.extra_wide if stretch.enclosure else W.wide
        pattern = "continuous"
        if stretch.is_outside and not seen_from_outside:
            width, pattern = W.narrow, "dashed"
        elif stretch.state is not State.NEW:
            width = W.symbol if stretch.enclosure else W.narrow
        points = outline_of.trimmed(drawn)
        lines = [polyline(*((p.x, p.y) for p in points), width_mm=width, pattern=pattern)]  # type: ignore[arg-type]
        if stretch.state is State.REMOVED:
            lines += list(strokes_along(points[0], points[-1]))
        ident = f"{stretch.way}:{'+'.join(stretch.cables)}:{i}"
        drawing.draw(ident, "outline", *lines, title=stretch.title)


def strokes_along(a: Point, b: Point) -> Iterator[Path]:
    """Yield short strokes across a line that is removed."""
    length = math.dist(a, b)
    count = int(length / STROKE_EVERY_MM)
    for n in range(count):
        share = (n + 0.5) / count
        x, y = a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share
        yield polyline((x - 0.9, y + 0.9), (x + 0.9, y - 0.9), width_mm=W.narrow)


@dataclass(frozen=True)
class Outlines:
    """Boxes of boards, cabinets and points: a line that ends inside one stops at its edge."""

    boxes: tuple[Box, ...]

    def trimmed(self, drawn: DrawnStretch) -> tuple[Point, ...]:
        """Return the line of a length, cut back to the edge of what it ends in."""
        if drawn.home_x is not None:
            return self._bent(drawn, drawn.home_x)
        return self._cut(drawn.a, drawn.b)

    def _cut(self, a: Point, b: Point) -> tuple[Point, Point]:
        for box in self.boxes:
            a = _pulled(a, b, box)
            b = _pulled(b, a, box)
        return a, b

    def _bent(self, drawn: DrawnStretch, home_x: float) -> tuple[Point, ...]:
        """Return a line at the side of its place that bends back to an end where it must."""
        first, last = self._cut(Point(home_x, drawn.a.y), Point(home_x, drawn.b.y))
        top, foot = self._cut(drawn.a, drawn.b)
        upper = (top,) if top.y == first.y else (first, Point(drawn.a.x, first.y + BEND_MM))
        lower = (foot,) if foot.y == last.y else (Point(drawn.a.x, last.y - BEND_MM), last)
        return (*upper, *lower)


def _pulled(end: Point, other: Point, box: Box) -> Point:
    """Return the end moved to the edge of a box that it lies in, towards the other end."""
    inside = box.x0 <= end.x <= box.x1 and box.y0 <= end.y <= box.y1
    other_inside = box.x0 <= other.x <= box.x1 and box.y0 <= other.y <= box.y1
    if not inside or other_inside:
        return end
    if abs(end.x - other.x) < 1e-6:
        return Point(end.x, box.y1 if other.y > end.y else box.y0)
    return Point(box.x1 if other.x > end.x else box.x0, end.y)


def _line(view: WallView, stretch: Stretch) -> tuple[Point, Point]:
    a = view.at(stretch.start.along, stretch.start.up)
    b = view.at(stretch.end.along, stretch.end.up)
    return (b, a) if stretch.is_upright else (a, b)


def _sharing_a_line(view: WallView, lengths: Sequence[Stretch]) -> list[list[Stretch]]:
    """Group lengths that would lie on one another. Each group is sorted by its far end."""
    groups: list[list[Stretch]] = []
    for stretch in lengths:
        home = next((g for g in groups if any(_overlap(view, stretch, o) for o in g)), None)
        if home is None:
            groups.append([stretch])
        else:
            home.append(stretch)
    return groups


def _overlap(view: WallView, one: Stretch, other: Stretch) -> bool:
    if one.is_upright != other.is_upright or one.is_outside != other.is_outside:
        return False
    if one.is_upright:
        apart = view.mm(abs(one.start.along - other.start.along))
        low = max(one.start.up, other.start.up)
        high = min(one.end.up, other.end.up)
    else:
        apart = view.mm(abs(one.start.up - other.start.up))
        low = max(min(one.start.along, one.end.along), min(other.start.along, other.end.along))
        high = min(max(one.start.along, one.end.along), max(other.start.along, other.end.along))
    return apart < SAME_LINE_MM and view.mm(high - low) > 1.0
