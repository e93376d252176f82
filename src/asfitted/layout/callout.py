"""Callouts: a few short lines of text near the thing they name, with a leader as last resort.

Places beside the thing are best; then places further off, joined to it by a short straight leader
that crosses no text and no other leader. Which callout gets which place is chosen in
``callout_choice``. Same input, same places.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.free_room import gap_mm
from asfitted.layout.lettering import BODY, TAG, box_of, line_pitch_mm
from asfitted.layout.sheet_layout import Circle, Item, Path, Stroke, Text

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.free_room import FreeRoom
    from asfitted.layout.lettering import Anchor

CLEAR_MM, CLOSE_MM = 1.8, 0.8  # round the words of a callout with a leader; the least allowed
SLIDE_MM = 1.5  # up or down beside a thing
GAP = 1.3  # from the thing to its callout, mm
LEADER_MM = 0.25
LEAST_LEADER_MM = 2.0
STEP_X, STEP_Y, REACH = 4.0, 3.0, 62.0
FINE_MM = 14.0  # beyond this every second row and column is enough
MOST_SPOTS = 140  # places further off that are kept for one callout
LEADER_COST, INK_COST, CLOSE_COST = 10.0, 4.0, 4.0
POOR_COST = 25.0  # of words inside a door or window that they do not name
THIN_MM, LEAST_SLOPE = 2.5, 0.3  # a leader does not run on in the direction of a thin target
OWN_MM = 0.5  # words stand nearer to their own thing than to any other by so much
RING_MM = 3.2  # radius of the ring round the number of a keynote


@dataclass(frozen=True)
class Callout:
    """What to write about a thing: ``tag`` bold at 3.5 mm, then ``lines`` at 2.5 mm.

    ``weight`` says how much it matters that it finds a place. ``rivals`` are boxes of things of
    the same sort: without a leader the words stand nearer to their own. A ``keynote`` is a number
    in a ring instead of words. ``other_lines`` are other wordings, each with what it costs
    more than the first.
    """

    ident: str
    tag: str
    lines: tuple[str, ...]
    target: Box  # box of the thing on the sheet
    link: str = ""
    weight: float = 1.0
    rivals: tuple[Box, ...] = ()
    keynote: int = 0
    other_lines: tuple[tuple[float, tuple[str, ...]], ...] = ()
    core_mm: float = (
        0.0  # a leader goes on to within so much of the middle; 0 = to the target's edge
    )

    @property
    def words(self) -> str:
        """All of its words on one line."""
        return " ".join([self.tag, *self.lines]).strip()


@dataclass(frozen=True)
class Spot:
    """A place for the words of a callout, its leader if it needs one, and what it costs, mm."""

    box: Box
    leader: tuple[Point, Point] | None
    cost: float
    lines: tuple[str, ...]
    hull: Box = field(init=False, compare=False, repr=False)  # round words and leader

    def __post_init__(self) -> None:
        """Work out the hull once: it is asked for at every comparison with another place."""
        hull = self.box
        if self.leader is not None:
            (ax, ay), (bx, by) = self.leader
            hull = hull.joined(Box(min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)))
        object.__setattr__(self, "hull", hull)


def callout_size(callout: Callout) -> tuple[float, float]:
    """Return the width and height in mm that the words of a callout need."""
    if callout.keynote:
        return 2 * RING_MM, 2 * RING_MM
    widths = [text_width_mm(line, BODY) for line in callout.lines]
    if callout.tag:
        widths.append(text_width_mm(callout.tag, TAG, bold=True))
    pitch = line_pitch_mm(BODY)
    height = len(callout.lines) * pitch - (pitch - BODY) * (not callout.tag) + 0.33 * BODY
    return max(widths), height + (TAG if callout.tag else 0.0)


def spots_near(room: FreeRoom, callout: Callout) -> list[Spot]:
    """Return the free places beside a thing, best first, none of them nearer to a rival."""
    spots = []
    for more, form in _forms_of(callout):
        for rank, box in enumerate(_round_about(callout.target, *callout_size(form))):
            if room.is_free(box) and _is_its_own(form, box):
                spots.append(Spot(box, None, 0.6 * rank + more, form.lines))
    return sorted(spots, key=lambda s: s.cost)


def _forms_of(callout: Callout) -> list[tuple[float, Callout]]:
    """Return a callout with its lines, then with each other wording and its cost."""
    others = ((more, replace(callout, lines=lines)) for more, lines in callout.other_lines)
    return [(0.0, callout), *others]


def _is_its_own(callout: Callout, box: Box) -> bool:
    """Tell whether words in a box stand nearer to their thing than to its rivals."""
    if not callout.rivals:
        return True
    head = callout_texts(callout, Spot(box, None, 0.0, callout.lines))[0]
    words = box_of(head)
    limit = gap_mm(words, callout.target) + OWN_MM
    return all(gap_mm(words, rival) > limit for rival in callout.rivals)


def spots_further_off(
    room: FreeRoom, callout: Callout, reach: float = REACH, most: int = MOST_SPOTS
) -> list[Spot]:
    """Return free places with a leader that crosses no words and no leader, cheapest first."""
    spots = [
        replace(spot, cost=spot.cost + more)
        for more, form in _forms_of(callout)
        for spot in _spots_of_form(room, form, reach, most)
    ]
    return sorted(spots, key=lambda s: (s.cost, s.box.y0, s.box.x0))


def _spots_of_form(room: FreeRoom, callout: Callout, reach: float, most: int) -> list[Spot]:
    shape = _Shape.of(callout)
    target = callout.target
    spots: list[Spot] = []
    for box in _reachable(room.limits, callout, (shape.width, shape.height), reach):
        if len(spots) >= most:
            break
        if not room.is_free(box, CLOSE_MM):
            continue
        ends = shape.leader(target, box)
        length = math.dist(*ends)
        if not LEAST_LEADER_MM <= length <= reach or _continues(target, ends):
            continue
        crossed = room.leader_cost(*ends, target)
        if crossed is None:
            continue
        cost = LEADER_COST + length + INK_COST * crossed
        cost += 0.0 if room.is_free(box, CLEAR_MM) else CLOSE_COST
        cost += POOR_COST if room.is_poor(box) else 0.0
        spots.append(Spot(box, ends, cost, callout.lines))
    return spots


def _reachable(limits: Box, callout: Callout, size: tuple[float, float], reach: float) -> list[Box]:
    """Return places on a grid about a thing within reach, the nearest first."""
    width, height = size
    target = callout.target
    x0, x1 = max(limits.x0, target.x0 - reach - width), min(limits.x1 - width, target.x1 + reach)
    y0, y1 = max(limits.y0, target.y0 - reach - height), min(limits.y1 - height, target.y1 + reach)
    columns = _grid(target.centre.x - width / 2, x0, x1, STEP_X)
    rows = _grid(target.centre.y - height / 2, y0, y1, STEP_Y)
    across = [(i, x, max(0.0, x - target.x1, target.x0 - x - width)) for i, x in enumerate(columns)]
    down = [(j, y, max(0.0, y - target.y1, target.y0 - y - height)) for j, y in enumerate(rows)]
    found = []
    for i, x, dx in across:
        for j, y, dy in down:
            gap = math.hypot(dx, dy)
            is_coarse = gap > FINE_MM and (i % 2 or j % 2)
            if not is_coarse and LEAST_LEADER_MM <= gap <= reach:
                found.append((gap, y, x))
    found.sort()
    return [Box(x, y, x + width, y + height) for _, y, x in found]


def _continues(target: Box, ends: tuple[Point, Point]) -> bool:
    """Tell whether a leader would look like a continuation of the line that it names."""
    dx, dy = abs(ends[1].x - ends[0].x), abs(ends[1].y - ends[0].y)
    is_level = target.height < THIN_MM < target.width
    is_upright = target.width < THIN_MM < target.height
    return (is_level and dy < dx * LEAST_SLOPE) or (is_upright and dx < dy * LEAST_SLOPE)


def _grid(middle: float, low: float, high: float, step: float) -> list[float]:
    """Return places ``step`` apart through a middle, between two limits that are places too."""
    if high < low:
        return []
    first = math.ceil((low - middle) / step)
    last = math.floor((high - middle) / step)
    return sorted({low, high, *(middle + i * step for i in range(first, last + 1))})


def _round_about(target: Box, width: float, height: float) -> Iterator[Box]:
    """Yield places round a box, best first: below, right, left, above, flush, then corners."""
    middle = target.centre
    left, right = target.x0 - GAP - width, target.x1 + GAP
    above, below = target.y0 - GAP - height, target.y1 + GAP
    across, down = middle.x - width / 2, middle.y - height / 2
    for x, y in (
        (across, below),
        (right, down),
        (left, down),
        (across, above),
        (target.x0, below),
        (target.x1 - width, below),
        (right, below),
        (left, below),
        (right, target.y0),
        (left, target.y0),
        (right, down - SLIDE_MM),
        (left, down - SLIDE_MM),
        (right, down + SLIDE_MM),
        (left, down + SLIDE_MM),
        (target.x0, above),
        (target.x1 - width, above),
        (right, above),
        (left, above),
    ):
        yield Box(x, y, x + width, y + height)


@dataclass(frozen=True)
class _Shape:
    """The size of a callout's words, and where on them a leader may end."""

    width: float
    height: float
    first_mm: float  # middle of the first line below the top
    first_width: float
    last_width: float
    is_ring: bool

    @classmethod
    def of(cls, callout: Callout) -> _Shape:
        width, height = callout_size(callout)
        widths = [text_width_mm(line, BODY) for line in callout.lines]
        if callout.tag:
            widths.insert(0, text_width_mm(callout.tag, TAG, bold=True))
        cap = TAG if callout.tag else BODY
        ends = (widths[0], widths[-1]) if widths else (width, width)
        return cls(width, height, cap / 2, *ends, is_ring=bool(callout.keynote))

    def leader(self, target: Box, box: Box) -> tuple[Point, Point]:
        """Return the shortest leader from the edge of a thing to the words in a box.

        It meets the words at the side of their first line, or over or under the nearest line.
        """
        if self.is_ring:
            return _ring_leader(target, box)
        ends = []
        if box.x0 > target.x1:
            ends.append(Point(box.x0 - 0.7, box.y0 + self.first_mm))
        elif box.x1 < target.x0:
            ends.append(Point(box.x1 + 0.7, box.y0 + self.first_mm))
        if box.y1 < target.y0:
            ends.append(Point(self._over(target, box, self.last_width), box.y1 + 0.4))
        elif box.y0 > target.y1:
            ends.append(Point(self._over(target, box, self.first_width), box.y0 - 0.6))
        pairs = [(_nearest(target, end), end) for end in ends]
        return min(pairs, key=lambda pair: (math.dist(*pair), pair)) if pairs else (box.centre,) * 2

    def _over(self, target: Box, box: Box, width: float) -> float:
        """Return x on a line of the words, as near to the middle of the thing as it goes."""
        is_right_aligned = box.x1 <= target.x0 + 0.01
        low = box.x1 - width if is_right_aligned else box.x0
        return _held(target.centre.x, low, low + width)


def _ring_leader(target: Box, box: Box) -> tuple[Point, Point]:
    centre = box.centre
    start = _nearest(target, centre)
    length = math.dist(start, centre) or 1.0
    share = (length - RING_MM) / length
    end = start.moved((centre.x - start.x) * share, (centre.y - start.y) * share)
    return start, end


def _nearest(target: Box, end: Point) -> Point:
    return Point(_held(end.x, target.x0, target.x1), _held(end.y, target.y0, target.y1))


def _held(value: float, low: float, high: float) -> float:
    return min(max(value, low), high)


def _to_core(callout: Callout, leader: tuple[Point, Point]) -> tuple[Point, ...]:
    """Return a leader that goes on from the edge of a symbol's box to the symbol in its middle."""
    start, end = leader
    middle = callout.target.centre
    length = math.dist(start, middle)
    if not callout.core_mm or length <= callout.core_mm:
        return leader
    share = (length - callout.core_mm) / length
    inner = start.moved((middle.x - start.x) * share, (middle.y - start.y) * share)
    return inner, start, end


def callout_texts(callout: Callout, spot: Spot) -> tuple[Text, ...]:
    """Return the lines of a callout at a place: towards the thing where they stand beside it."""
    box = spot.box
    if callout.keynote:
        at = box.centre.moved(dy=BODY / 2)
        return (Text(at, str(callout.keynote), BODY, anchor="middle"),)
    anchored_right = box.x1 <= callout.target.x0 + 0.01
    centred = spot.leader is None and not anchored_right and box.x0 < callout.target.x1
    anchor: Anchor = "end" if anchored_right else "middle" if centred else "start"
    x = {"end": box.x1, "middle": box.centre.x, "start": box.x0}[anchor]
    texts = []
    y = box.y0
    if callout.tag:
        y += TAG
        texts.append(Text(Point(x, y), callout.tag, TAG, anchor=anchor, bold=True))
        y += line_pitch_mm(BODY)
    else:
        y += BODY
    for line in spot.lines:
        texts.append(Text(Point(x, y), line, BODY, anchor=anchor))
        y += line_pitch_mm(BODY)
    return tuple(texts)


def write_callout(room: FreeRoom, callout: Callout, spot: Spot) -> tuple[Item, ...]:
    """Return the items of a callout at its place, and note them as taken."""
    items = []
    if spot.leader is not None:
        line = Path(_to_core(callout, spot.leader), Stroke(LEADER_MM))
        items.append(Item(f"{callout.ident}:leader", "dim", (line,)))
        room.take_leader(*spot.leader)
    texts = callout_texts(callout, spot)
    if callout.keynote:
        ring = Circle(spot.box.centre, RING_MM, Stroke(LEADER_MM), fill="white")
        title = callout.words
        items.append(Item(f"{callout.ident}:ring", "outline", (ring,), title=title))
        room.take_solid(spot.box)
    items.append(Item(callout.ident, "text", texts, link=callout.link))
    for text in texts:
        room.take_solid(box_of(text))
    return tuple(items)
