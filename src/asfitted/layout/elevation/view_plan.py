"""Every view of a job drawn once before sheets are numbered: its room above, and its details."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.layout.elevation.detail_marks import DetailMark
from asfitted.layout.elevation.details import detail_letter, plan_details, windows_at_once
from asfitted.layout.elevation.paper_room import above_title
from asfitted.layout.elevation.set_scale import frame_at
from asfitted.layout.elevation.sheet_packing import PlannedView
from asfitted.layout.elevation.wall_drawing import draw_wall, need_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.elevation.arrangement import Surroundings
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_drawing import Frame

LABEL_ROWS_MM = 20.0  # two rows of labels above the ceiling
ROWS_COST = 80.0  # of leaders and missing words that label rows must save


def plan_views(
    walls: Sequence[WallContent], scale: int, around: Surroundings
) -> tuple[tuple[PlannedView, ...], tuple[PlannedView, ...]]:
    """Return the views of the walls, and the details of crowded places."""
    views: list[PlannedView] = []
    details: list[PlannedView] = []
    for content in walls:
        view = _best_band(content, scale, around, _provisional(content, scale))
        found = plan_details(content, view.drawn, around)
        if found:
            frame = replace(view.frame, details=tuple(d.mark for d in found))
            view = _with_letters(content, frame, around)
        elif view.frame.details:
            view = _drawn(content, replace(view.frame, details=()), around)
        views.append(view)
        details += [_drawn(d.content, d.frame, around) for d in found]
    return tuple(views), tuple(details)


def _with_letters(content: WallContent, frame: Frame, around: Surroundings) -> PlannedView:
    """Return a view with its details, with more room above where a letter has no place."""
    view = _drawn(content, frame, around)
    if not any(words.startswith("Detail ") for words in view.home.left_over.keynotes):
        return view
    rows = replace(frame, band_mm=frame.band_mm + LABEL_ROWS_MM)
    if need_of(content, rows).height > above_title(around.paper).height:
        return view
    return _drawn(content, rows, around)


def _provisional(content: WallContent, scale: int) -> tuple[DetailMark, ...]:
    """Return marks of what will be enlarged in any case: no place is sought there for words."""
    return tuple(
        DetailMark(detail_letter(n), "", window, scale)
        for n, window in enumerate(windows_at_once(content, scale))
    )


def _best_band(
    content: WallContent, scale: int, around: Surroundings, details: tuple[DetailMark, ...]
) -> PlannedView:
    """Return a view with rows for labels above it where its words need them."""
    base = replace(frame_at(content, scale, around.paper), details=details)
    rows = replace(base, band_mm=base.band_mm + LABEL_ROWS_MM)
    best = _drawn(content, base, around)
    fits = need_of(content, rows).height <= above_title(around.paper).height
    if best.drawn.cost > ROWS_COST and fits:
        other = _drawn(content, rows, around)
        if other.drawn.cost + ROWS_COST < best.drawn.cost:
            return other
    return best


def _drawn(content: WallContent, frame: Frame, around: Surroundings) -> PlannedView:
    drawn = draw_wall(content, around.results, around.refs, frame, {})
    return PlannedView(content, frame, drawn)
