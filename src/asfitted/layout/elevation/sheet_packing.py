"""Views put on sheets: one for a large wall, several small ones of a room together."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.elevation.arrangement import (
    PlacedView,
    free_boxes,
    key_panel,
    keynote_panels,
    own_notes,
    tables_of,
    upper_left,
)
from asfitted.layout.elevation.free_boxes import without
from asfitted.layout.elevation.notes import HEIGHTS, SCAN, general_notes
from asfitted.layout.elevation.panels import NotesPanel, pack
from asfitted.layout.elevation.paper_room import room_on, title_room

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.elevation.arrangement import Surroundings
    from asfitted.layout.elevation.panels import Panel
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_drawing import Frame, WallDrawing

ORIGIN = Point(0.0, 0.0)
GAP_MM = 8.0  # between views on a sheet
MOST_VIEWS = 6
SCHEDULES_NOTE = "Notes and schedules: sheet 00."


@dataclass(frozen=True)
class PlannedView:
    """A view as planned: how it is drawn, as it came out, and where it stands on its sheet."""

    content: WallContent
    frame: Frame
    home: WallDrawing  # as drawn from (0, 0)
    at: Point = ORIGIN
    prefix: str = ""

    @cached_property
    def drawn(self) -> WallDrawing:
        """The drawing at its place."""
        return self.home.moved(self.at, self.prefix)

    @property
    def placed(self) -> PlacedView:
        """The view as panels beside it want to know it."""
        return PlacedView(self.content, self.drawn, self.prefix)


@dataclass(frozen=True)
class PlannedSheet:
    """The views that share a sheet; ``key`` is that of the first."""

    key: str
    views: tuple[PlannedView, ...]
    is_details: bool = False


def on_sheets(
    views: Sequence[PlannedView],
    around: Surroundings,
    *,
    with_tables: bool,
    any_room: bool = False,
) -> list[PlannedSheet]:
    """Return the views on as few sheets as their order allows.

    Args:
        views: the views, at (0, 0).
        around: the job and the paper.
        with_tables: whether all notes and tables of a shared sheet must have room on it.
        any_room: whether views of several rooms may share a sheet.
    """
    sheets: list[list[PlannedView]] = []
    for view in views:
        if sheets and _may_share(sheets[-1], view, any_room=any_room):
            joined = _placed([*sheets[-1], view], around)
            if joined and _has_room_for_words(joined, around, with_tables=with_tables):
                sheets[-1] = joined
                continue
        sheets.append([replace(view, at=upper_left(around.paper))])
    return [PlannedSheet(group[0].content.key, tuple(group)) for group in sheets]


def with_details(
    sheets: Sequence[PlannedSheet],
    details: Sequence[PlannedView],
    around: Surroundings,
    *,
    with_tables: bool,
) -> tuple[list[PlannedSheet], list[PlannedView]]:
    """Return the sheets with the details of their views as far as there is room, and the rest."""
    done: list[PlannedSheet] = []
    left: list[PlannedView] = []
    for sheet in sheets:
        group = list(sheet.views)
        keys = tuple(f"{view.content.key}/detail-" for view in sheet.views)
        for detail in (d for d in details if d.content.key.startswith(keys)):
            joined = _placed([*group, detail], around)
            if joined and _has_room_for_words(joined, around, with_tables=with_tables):
                group = joined
            else:
                left.append(detail)
        done.append(replace(sheet, views=tuple(group)))
    return done, left


def _may_share(group: Sequence[PlannedView], view: PlannedView, *, any_room: bool) -> bool:
    same_room = group[0].content.room.name == view.content.room.name
    return len(group) < MOST_VIEWS and (any_room or same_room)


def _placed(views: Sequence[PlannedView], around: Surroundings) -> list[PlannedView] | None:
    """Return views at places on one sheet, the highest and leftmost that are free, or None."""
    free = without((room_on(around.paper),), title_room(around.paper))
    placed = []
    for view in views:
        box = view.home.box
        fits = [f for f in free if box.width <= f.width + 1e-6 and box.height <= f.height + 1e-6]
        if not fits:
            return None
        spot = min(fits, key=lambda f: (f.y0, f.x0))
        moved = replace(view, at=Point(spot.x0, spot.y0), prefix=f"{_tail(view.content)}:")
        placed.append(moved)
        free = without(free, moved.drawn.box.grown(GAP_MM))
    return placed


def _tail(content: WallContent) -> str:
    return content.key.partition("/")[2]


def _has_room_for_words(
    views: Sequence[PlannedView], around: Surroundings, *, with_tables: bool
) -> bool:
    """Tell whether notes and key plan, and if wished the tables, have room beside the views."""
    placed = [view.placed for view in views]
    free = free_boxes(placed, around.paper)
    end = max(v.drawn.box.y1 for v in placed)
    key = key_panel(placed, around)
    keynotes = keynote_panels(placed)
    own = own_notes(placed, around)
    panels: list[Panel]
    if with_tables:
        widened = any(v.drawn.widened for v in placed)
        notes = NotesPanel((*general_notes([v.content for v in placed], widened=widened), *own))
        panels = [*keynotes, notes, *key, *tables_of(placed, around.results)]
    else:
        panels = [*keynotes, NotesPanel((SCAN, SCHEDULES_NOTE, HEIGHTS, *own)), *key]
    return not pack(panels, free, end).left_out
