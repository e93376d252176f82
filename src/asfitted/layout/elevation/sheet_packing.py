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
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_drawing import Frame, WallDrawing

ORIGIN = Point(0.0, 0.0)
GAP_MM = 7.0  # between views on a sheet
MOST_VIEWS = 6
SCHEDULES_NOTE = "Other notes and tables: sheet 000."


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
    """Return the views in order, each on the first sheet of its room that has a place for it.

    Args:
        views: the views, at (0, 0).
        around: the job and the paper.
        with_tables: whether all notes and tables of a shared sheet must have room on it.
        any_room: whether views of several rooms may share a sheet.
    """
    sheets: list[list[PlannedView]] = []
    for view in views:
        for index, group in enumerate(sheets):
            if not _may_share(group, view, any_room=any_room):
                continue
            joined = _placed([*group, view], around)
            if joined and _has_room_for_words(joined, around, with_tables=with_tables):
                sheets[index] = joined
                break
        else:
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
    return _on_one_floor(placed, around)


def _on_one_floor(views: Sequence[PlannedView], around: Surroundings) -> list[PlannedView]:
    """Return views that stand side by side let down until their floors are on one line.

    Where a view would then leave the sheet or meet another, all stay as they are.
    """
    floors: dict[tuple[float, int], float] = {}
    for view in views:
        row = (view.at.y, view.frame.scale)
        floors[row] = max(floors.get(row, 0.0), view.home.view.floor)
    moved = [
        replace(v, at=v.at.moved(dy=floors[v.at.y, v.frame.scale] - v.home.view.floor))
        for v in views
    ]
    boxes = [view.drawn.box for view in moved]
    room, title = room_on(around.paper), title_room(around.paper)
    has_room = all(room.holds(box) and not box.meets(title) for box in boxes)
    apart = not any(a.meets(b) for i, a in enumerate(boxes) for b in boxes[i + 1 :])
    return moved if has_room and apart else list(views)


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
    keynotes = tuple(keynote_panels(placed))
    own = own_notes(placed, around)
    if with_tables:
        widened = any(v.drawn.widened for v in placed)
        contents = [v.content for v in placed]
        general = general_notes(contents, around.results, widened=widened)
        tables = tables_of(placed, around.results)
        return not pack(
            [*keynotes, NotesPanel((*general, *own)), *key, *tables], free, end
        ).left_out
    least = (SCAN, SCHEDULES_NOTE)  # what heights count from stands on the sheet of notes, too
    return any(
        not pack([*keynotes, NotesPanel((*least, *heights, *own)), *key], free, end).left_out
        for heights in ((HEIGHTS,), ())
    )
