"""Callouts: a few short lines of text near the thing they name, with a leader as last resort.

Eight places round the thing are tried first; then places further and further off, joined to it by a
straight leader that crosses no text and no other leader. Same input, same places.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY, TAG, box_of, line_pitch_mm
from asfitted.layout.sheet_layout import Item, Path, Stroke, Text

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.layout.free_room import FreeRoom

CLEAR_MM = (1.8, 0.8)  # round the words of a callout; the second where the first is too much
GAP = 1.3  # from the thing to its callout, mm
LEADER_MM = 0.25
STEP, REACH = 4.0, 90.0
DIRECTIONS = 16
INK_PENALTY = 14.0


@dataclass(frozen=True)
class Callout:
    """What to write about a thing: ``tag`` bold at 3.5 mm, then ``lines`` at 2.5 mm."""

    ident: str
    tag: str
    lines: tuple[str, ...]
    target: Box  # box of the thing on the sheet
    link: str = ""


@dataclass(frozen=True)
class Placed:
    """A callout at its place: its items and the box of its words."""

    items: tuple[Item, ...]
    box: Box


def callout_size(callout: Callout) -> tuple[float, float]:
    """Return the width and height in mm that the words of a callout need."""
    widths = [text_width_mm(line, BODY) for line in callout.lines]
    if callout.tag:
        widths.append(text_width_mm(callout.tag, TAG, bold=True))
    pitch = line_pitch_mm(BODY)
    height = len(callout.lines) * pitch - (pitch - BODY) * (not callout.tag) + 0.33 * BODY
    return max(widths), height + (TAG if callout.tag else 0.0)


def place_near(room: FreeRoom, callout: Callout) -> Placed | None:
    """Put a callout beside its thing, or return None where all eight places are taken."""
    size = callout_size(callout)
    for box in _round_about(callout.target, *size):
        if room.is_free(box):
            return _write(room, callout, box, None)
    return None


def place_with_leader(room: FreeRoom, callout: Callout, reach: float = REACH) -> Placed | None:
    """Put a callout further off with a leader, or return None where there is no place at all."""
    best = None
    for clear in CLEAR_MM:
        best = best or _on_a_ring(room, callout, reach, clear)
    best = best or _anywhere(room, callout)
    return None if best is None else _write(room, callout, *best)


def _on_a_ring(
    room: FreeRoom, callout: Callout, reach: float, clear: float
) -> tuple[Box, tuple[Point, Point]] | None:
    """Return the best place on widening rings: near, and with a leader that crosses little."""
    best: tuple[float, Box, tuple[Point, Point]] | None = None
    for distance, box in _further_off(callout.target, *callout_size(callout), reach):
        if best is not None and distance >= best[0]:
            break
        if not room.is_free(box, clear):
            continue
        ends = _leader_ends(callout.target, box)
        crossed = room.leader_cost(*ends, callout.target)
        if crossed is None or line_length(ends) < 1.0:
            continue
        cost = distance + INK_PENALTY * max(0.0, crossed - 1.0)
        if best is None or cost < best[0]:
            best = (cost, box, ends)
    return None if best is None else best[1:]


def _anywhere(room: FreeRoom, callout: Callout) -> tuple[Box, tuple[Point, Point]] | None:
    """Return the nearest free place of all, with its leader; None where the drawing is full."""
    width, height = callout_size(callout)
    limits, target = room.limits, callout.target
    places = []
    for i in range(int((limits.width - width) / STEP) + 1):
        for j in range(int((limits.height - height) / STEP) + 1):
            x, y = limits.x0 + i * STEP, limits.y0 + j * STEP
            box = Box(x, y, x + width, y + height)
            places.append((line_length(_leader_ends(target, box)), box))
    for distance, box in sorted(places, key=lambda p: (p[0], p[1].y0, p[1].x0)):
        if distance < 1.0 or not room.is_free(box, CLEAR_MM[-1]):
            continue
        ends = _leader_ends(target, box)
        if room.leader_cost(*ends, target) is not None:
            return box, ends
    return None


def place(room: FreeRoom, callout: Callout) -> Placed | None:
    """Put a callout beside its thing, else further off with a leader, else return None."""
    return place_near(room, callout) or place_with_leader(room, callout)


def place_in_turn(room: FreeRoom, callouts: Sequence[Callout]) -> tuple[list[Item], list[Callout]]:
    """Place callouts: all that can stand beside their thing first, the rest with leaders.

    Returns:
        The items, and the callouts for which there was no room.
    """
    items: list[Item] = []
    waiting = []
    for callout in callouts:
        placed = place_near(room, callout)
        if placed is None:
            waiting.append(callout)
        else:
            items.extend(placed.items)
    left_over = []
    for callout in waiting:
        placed = place_with_leader(room, callout)
        if placed is None:
            left_over.append(callout)
        else:
            items.extend(placed.items)
    return items, left_over


def line_length(ends: tuple[Point, Point]) -> float:
    """Return the length of a leader, mm."""
    return math.dist(*ends)


def _round_about(target: Box, width: float, height: float) -> Iterator[Box]:
    """Yield the eight places round a box, best first: below, right, left, above, corners."""
    middle = target.centre
    left, right = target.x0 - GAP - width, target.x1 + GAP
    above, below = target.y0 - GAP - height, target.y1 + GAP
    across, down = middle.x - width / 2, middle.y - height / 2
    for x, y in (
        (across, below),
        (right, down),
        (left, down),
        (right, below),
        (left, below),
        (across, above),
        (right, above),
        (left, above),
    ):
        yield Box(x, y, x + width, y + height)


def _further_off(
    target: Box, width: float, height: float, reach: float
) -> Iterator[tuple[float, Box]]:
    """Yield places on widening rings round a box, with their distance from it in mm."""
    middle = target.centre
    for ring in range(1, int(reach / STEP) + 1):
        distance = ring * STEP
        for k in range(DIRECTIONS):
            angle = math.pi / 2 + k * 2 * math.pi / DIRECTIONS
            away_x = target.width / 2 + width / 2 + distance
            away_y = target.height / 2 + height / 2 + distance
            x = middle.x + away_x * math.cos(angle) - width / 2
            y = middle.y + away_y * math.sin(angle) - height / 2
            yield distance, Box(x, y, x + width, y + height)


def _leader_ends(target: Box, words: Box) -> tuple[Point, Point]:
    """Return a leader from the edge of a thing to the nearest edge of its words."""
    end = Point(
        min(max(target.centre.x, words.x0), words.x1),
        min(max(target.centre.y, words.y0), words.y1),
    )
    start = Point(min(max(end.x, target.x0), target.x1), min(max(end.y, target.y0), target.y1))
    length = math.dist(start, end)
    if length < 1.0:
        return start, start
    share = (length - 0.5) / length  # stops short of the words
    return start, Point(start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share)


def _write(
    room: FreeRoom, callout: Callout, box: Box, leader: tuple[Point, Point] | None
) -> Placed:
    """Return the items of a callout at its place, and note them as taken."""
    items = []
    if leader is not None:
        line = Path(leader, Stroke(LEADER_MM))
        items.append(Item(f"{callout.ident}:leader", "dim", (line,)))
        room.take_leader(*leader)
    anchored_right = box.x1 <= callout.target.x0 + 0.01
    centred = leader is None and not anchored_right and box.x0 < callout.target.x1
    anchor = "end" if anchored_right else "middle" if centred else "start"
    x = {"end": box.x1, "middle": box.centre.x, "start": box.x0}[anchor]
    texts = []
    y = box.y0
    if callout.tag:
        y += TAG
        texts.append(Text(Point(x, y), callout.tag, TAG, anchor=anchor, bold=True))  # type: ignore[arg-type]
        y += line_pitch_mm(BODY)
    else:
        y += BODY
    for line_ in callout.lines:
        texts.append(Text(Point(x, y), line_, BODY, anchor=anchor))  # type: ignore[arg-type]
        y += line_pitch_mm(BODY)
    items.append(Item(callout.ident, "text", tuple(texts), link=callout.link))
    for text in texts:
        room.take_solid(box_of(text))
    return Placed(tuple(items), box)
