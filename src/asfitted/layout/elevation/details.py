"""Which crowded places of a view are enlarged, how far, and to what scale."""

from __future__ import annotations

import string
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.layout.elevation.detail_marks import DetailMark
from asfitted.layout.elevation.dimension_chain import written_marks
from asfitted.layout.elevation.paper_room import above_title
from asfitted.layout.elevation.shown_part import part_of
from asfitted.layout.elevation.wall_drawing import (
    Frame,
    base_band_mm,
    draw_wall,
    marks_on,
    need_of,
)
from asfitted.layout.elevation.wall_parts import THROUGH_THING, best_cut, taken_on
from asfitted.layout.elevation.window import Edge, Window

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.geometry import Box
    from asfitted.layout.elevation.arrangement import Surroundings
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_drawing import WallDrawing
    from asfitted.layout.sheet_layout import Paper

SCALES = (100, 50, 25, 20, 10)
PART_COST = 8  # words that may lack room before a window is shown in one more part
MOST_KEYNOTES = 5  # rings with their words on the same sheet that a reader follows easily
MOST_BARE = 8  # tags without their height that a note may tell of
MOST_SPAN_MM = 1500.0  # a longer thing without words is told in a note, not enlarged
AROUND_MM, GAP_MM, EDGE_MM = 250.0, 300.0, 120.0
NEAR_END_MM = 150.0  # a detail that ends so near to a corner, floor or ceiling goes up to it
NO_BAND_MM = 4.0
LEAST_HIGH_MM = 600.0  # a window is not cut into lower ones than half of this
CUT = Edge("cut")


@dataclass(frozen=True)
class Detail:
    """An enlarged part of a view."""

    mark: DetailMark
    content: WallContent
    frame: Frame


def windows_at_once(content: WallContent, scale: int) -> tuple[Window, ...]:
    """Return the parts of a view so crowded that not even their dimensions have room under it."""
    return tuple(
        _window(content, span) for span in _joined(content, _without_dimension(content, scale))
    )


def plan_details(
    content: WallContent, drawn: WallDrawing, around: Surroundings
) -> tuple[Detail, ...]:
    """Return the details in which all finds room that found none in a view."""
    details: list[Detail] = []
    for window in _crowded(content, drawn):
        for found, frame in _enlarged(content, window, drawn.view.scale, around):
            letter = detail_letter(len(details))
            key = f"{content.key}/detail-{letter}"
            shown = replace(part_of(content, found, key), detail=letter)
            mark = DetailMark(letter, key, found, frame.scale)
            details.append(Detail(mark, shown, frame))
    return tuple(details)


def _without_dimension(content: WallContent, scale: int) -> list[Span]:
    """Return the places whose dimension has no room under a view at a scale."""
    marks = marks_on(content)
    written = written_marks(marks, content.window.length_mm / scale)
    return [
        (m.along_mm - 50.0, m.along_mm + 50.0, *_heights_at(content, m.along_mm))
        for m in marks
        if m not in written
    ]


def detail_letter(number: int) -> str:
    """Return the letter of a detail: a to z, then a1 and so on."""
    letters = string.ascii_lowercase
    return letters[number] if number < len(letters) else f"{letters[number % 26]}{number // 26}"


def _crowded(content: WallContent, drawn: WallDrawing) -> tuple[Window, ...]:
    """Return the parts of a view where words found no room, widened to whole things."""
    view, left = drawn.view, drawn.left_over
    targets = left.targets
    if len(left.keynotes) <= MOST_KEYNOTES:
        targets = targets[: len(left.bare)]
    if len(left.bare) <= MOST_BARE:
        targets = targets[len(left.bare) :]
    spans = [
        span
        for box in targets
        if max(box.width, box.height) * view.scale <= MOST_SPAN_MM
        for span in [_span(view.scale, view.left, view.floor, content, box)]
    ]
    spans += _without_dimension(content, view.scale)
    return tuple(_window(content, span) for span in _joined(content, spans))


Span = tuple[float, float, float, float]  # from, to along; low, high


def _span(scale: int, left: float, floor: float, content: WallContent, box: Box) -> Span:
    along = content.window.from_mm - left * scale
    return (
        along + box.x0 * scale,
        along + box.x1 * scale,
        (floor - box.y1) * scale,
        (floor - box.y0) * scale,
    )


def _heights_at(content: WallContent, along_mm: float) -> tuple[float, float]:
    """Return the lowest and highest thing at a place along the wall."""
    ups = [t.at.up for t in content.things if abs(t.at.along - along_mm) < 1.0]
    return (min(ups), max(ups)) if ups else (content.window.low_mm, content.window.low_mm)


def _joined(content: WallContent, spans: Sequence[Span]) -> list[Span]:
    """Return spans that touch along the wall as one, each with every thing at its sides whole."""
    grown = sorted(
        (a - AROUND_MM, b + AROUND_MM, lo - AROUND_MM, hi + AROUND_MM) for a, b, lo, hi in spans
    )
    joined: list[Span] = []
    for span in grown:
        whole = _with_whole_things(content, span)
        while joined and whole[0] <= joined[-1][1] + GAP_MM:
            last = joined.pop()
            whole = (
                min(last[0], whole[0]),
                max(last[1], whole[1]),
                min(last[2], whole[2]),
                max(last[3], whole[3]),
            )
            whole = _with_whole_things(content, whole)
        joined.append(whole)
    return joined


def _with_whole_things(content: WallContent, span: Span) -> Span:
    """Return a span widened so that no thing stands half in it."""
    a, b, low, high = span
    for _ in range(len(content.things) + 1):
        before = (a, b, low, high)
        for t in content.things:
            left, right = t.at.along - t.width_mm / 2, t.at.along + t.width_mm / 2
            foot, head = t.at.up - t.height_mm / 2, t.at.up + t.height_mm / 2
            if left < b and a < right and foot < high and low < head:
                a, b = min(a, left - EDGE_MM), max(b, right + EDGE_MM)
                low, high = min(low, foot - EDGE_MM), max(high, head + EDGE_MM)
        if before == (a, b, low, high):
            break
    return a, b, low, high


def _window(content: WallContent, span: Span) -> Window:
    """Return the window of a span, held inside its view."""
    outer = content.window
    a, b, low, high = span
    a, b = max(a, outer.from_mm), min(b, outer.to_mm)
    at_left = a - outer.from_mm < NEAR_END_MM and outer.left.kind == "corner"
    at_right = outer.to_mm - b < NEAR_END_MM and outer.right.kind == "corner"
    return Window(
        outer.from_mm if at_left else a,
        outer.to_mm if at_right else b,
        outer.low_mm if low - outer.low_mm < NEAR_END_MM else low,
        outer.high_mm if outer.high_mm - high < NEAR_END_MM else high,
        outer.left if at_left else CUT,
        outer.right if at_right else CUT,
        is_detail=True,
    )


def _enlarged(
    content: WallContent, window: Window, view_scale: int, around: Surroundings
) -> list[tuple[Window, Frame]]:
    """Return a window in one or more parts at the scale that leaves fewest words without room."""
    best: tuple[int, list[tuple[Window, Frame]]] | None = None
    for scale in (s for s in SCALES if s < view_scale):
        frames = _split(content, window, scale, around.paper)
        if frames is None:
            continue
        missing = PART_COST * (len(frames) - 1)
        missing += sum(len(_without_dimension(part_of(content, p, ""), scale)) for p, _ in frames)
        if best is not None and missing >= best[0]:
            continue
        for part, frame in frames:
            shown = replace(part_of(content, part, content.key), detail="a")
            left = draw_wall(shown, around.results, around.refs, frame, {}).left_over
            missing += 2 * len(left.keynotes) + 3 * len(left.unplaced) + len(left.bare)
        if best is None or missing < best[0]:
            best = (missing, frames)
        if missing <= PART_COST * (len(frames) - 1):
            break
    return best[1] if best else []


def _split(
    content: WallContent, window: Window, scale: int, paper: Paper
) -> list[tuple[Window, Frame]] | None:
    """Return a window in parts that fit the paper at a scale, or None where they cannot."""
    room = above_title(paper)
    todo, done = [window], []
    while todo:
        part = todo.pop(0)
        shown = replace(part_of(content, part, content.key), detail="a")
        has_corner = "corner" in (part.left.kind, part.right.kind)
        band = base_band_mm(shown, scale) if has_corner else NO_BAND_MM
        frame = Frame(scale, paper, band, room.width)
        need = need_of(shown, frame)
        if need.height > room.height:
            if part.height_mm < LEAST_HIGH_MM:
                return None
            up = _level_cut(content, part)
            todo[:0] = [replace(part, low_mm=up), replace(part, high_mm=up)]
            continue
        if need.width <= room.width:
            done.append((part, frame))
            continue
        at = best_cut(
            (part.from_mm + part.to_mm) / 2,
            part.from_mm + part.length_mm * 0.2,
            part.to_mm - part.length_mm * 0.2,
            taken_on(content),
        )
        if part.length_mm < 2 * EDGE_MM:
            return None
        todo[:0] = [replace(part, to_mm=at, right=CUT), replace(part, from_mm=at, left=CUT)]
    return done


def _level_cut(content: WallContent, window: Window) -> float:
    """Return the height at which a window that is too high is cut in two, clear of things."""
    taken = [
        (t.at.up - t.height_mm / 2 - 50.0, t.at.up + t.height_mm / 2 + 50.0, THROUGH_THING)
        for t in content.things
        if window.holds(t.at)
    ]
    taken += [
        (p.start.up - 150.0, p.start.up + 150.0, THROUGH_THING)
        for p in content.pieces
        if p.is_level
    ]
    middle, quarter = (window.low_mm + window.high_mm) / 2, window.height_mm / 4
    return best_cut(middle, middle - quarter, middle + quarter, taken)
