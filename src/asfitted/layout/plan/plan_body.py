"""The plan proper: walls, runs, things, what cameras see, marks, and words where there is room."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.callout import Callout
from asfitted.layout.callout_choice import place_together
from asfitted.layout.free_room import FreeRoom
from asfitted.layout.lettering import box_of
from asfitted.layout.plan.camera_views import draw_views, write_letters
from asfitted.layout.plan.clipping import WindowDrawing
from asfitted.layout.plan.declared_ends import draw_declared_ends
from asfitted.layout.plan.keynotes import place_keynotes
from asfitted.layout.plan.match_lines import draw_match_lines
from asfitted.layout.plan.passages import draw_passages
from asfitted.layout.plan.plan_marks import draw_room_name, draw_wall_mark
from asfitted.layout.plan.plan_places import place_things
from asfitted.layout.plan.plan_runs import draw_runs, lanes_of, run_boxes
from asfitted.layout.plan.plan_things import draw_things, plan_things
from asfitted.layout.plan.plan_view import WALL_MM, view_of_window
from asfitted.layout.plan.plan_walls import draw_walls, opening_middle
from asfitted.layout.sheet_layout import Text

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.layout.plan.match_lines import MatchWords
    from asfitted.layout.plan.plan_marks import WallMark
    from asfitted.layout.plan.plan_parts import PlanPart
    from asfitted.layout.plan.plan_runs import Lane
    from asfitted.layout.plan.plan_things import PlacedThing, PlanThing
    from asfitted.layout.plan.plan_view import PlanView
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model
    from asfitted.layout.table import Table
    from asfitted.resolve.installation import Installation, Wall

NAME_CLEAR_MM = 1.2
REACH_MM = 42.0  # longest leader: further off a number in a ring reads better


@dataclass(frozen=True)
class PlanRoom:
    """Where on the sheet a plan is drawn, its scale, and what stays free for the north mark."""

    area: Box
    scale: int
    clear: Box


@dataclass(frozen=True)
class DrawnPlan:
    """A drawn plan: its items, what waits for sheet numbers, and what found no room as a tag."""

    items: tuple[Item, ...]
    things: tuple[PlanThing, ...]
    marks: tuple[WallMark, ...]
    matches: tuple[MatchWords, ...]
    keynotes: Table | None
    unplaced: tuple[str, ...]


def draw_plan(model: Model, part: PlanPart, room: PlanRoom, keys: Mapping[int, str]) -> DrawnPlan:
    """Draw a plan: lines first, then words where there is room for them.

    Args:
        model: what of the job the plan shows.
        part: the part of the plan.
        room: where it stands on the sheet.
        keys: key of the sheet of each part, by its number.
    """
    installation, area = model.installation, room.area
    view = view_of_window(part.window, room.scale, part.room(area))
    window, edge = _boxes(view, part, area)
    drawing = WindowDrawing(FreeRoom(area), window=edge)
    drawing.room.take_solid(room.clear)
    for one in installation.rooms.values():
        draw_walls(drawing, view, installation, one)
    things = plan_things(installation, model.symbols)
    lanes = lanes_of(view, installation)
    depths = _depths(installation, lanes)
    taken = run_boxes(view, installation, lanes)
    whole = place_things(view, installation, things, depths, taken, within=edge)
    placed, undrawn = _apart(whole)
    under = len(drawing.items)
    callouts = draw_runs(drawing, view, installation, lanes, edge)
    callouts += draw_passages(drawing, view, installation)
    callouts = [*draw_things(drawing, view, installation, placed, depths), *callouts]
    matches = draw_match_lines(drawing, part, window, dict(keys))
    marks = _wall_marks(drawing, view, installation, depths, edge)
    letters = _views_underneath(drawing, under, (view, model, placed), area)
    write_letters(drawing, letters)
    for one in installation.rooms.values():
        draw_room_name(drawing, view, installation, one, window)
    callouts += draw_declared_ends(drawing, view, installation)
    more = _written(drawing, callouts, _name_openings(drawing, installation, view, edge))
    keynotes = place_keynotes(drawing, more, things, [one.thing for one in undrawn])
    unplaced = tuple(callout.words for callout in more)
    return DrawnPlan(tuple(drawing.items), things, marks, matches, keynotes, unplaced)


def _wall_marks(
    drawing: WindowDrawing,
    view: PlanView,
    installation: Installation,
    depths: Mapping[str, float],
    edge: Box,
) -> tuple[WallMark, ...]:
    """Draw the marks of the walls' elevations; return those that wait for a sheet number."""
    marks = [
        draw_wall_mark(
            drawing,
            view,
            wall,
            depths.get(wall.name, 0.0),
            _room_box(view, installation, wall, edge),
        )
        for wall in installation.walls.values()
    ]
    return tuple(mark for mark in marks if mark is not None)


def _written(
    drawing: WindowDrawing, callouts: Sequence[Callout], left: Sequence[Callout]
) -> list[Callout]:
    """Write tags, names of openings that found no room last; return what has no room as a tag."""
    tags, more = place_together(drawing.room, [*callouts, *left], reach=REACH_MM)
    drawing.extend(tags)
    return more


def _room_box(view: PlanView, installation: Installation, wall: Wall, edge: Box) -> Box:
    """Return the box on the sheet round the room of a wall, as far as the plan shows it."""
    starts = [installation.walls[w].start for w in installation.rooms[wall.room].walls]
    points = [view.at(p.x, p.y) for p in starts]
    xs, ys = [p.x for p in points], [p.y for p in points]
    return Box(
        max(min(xs), edge.x0), max(min(ys), edge.y0), min(max(xs), edge.x1), min(max(ys), edge.y1)
    )


def _views_underneath(
    drawing: WindowDrawing,
    under: int,
    seen: tuple[PlanView, Model, tuple[PlacedThing, ...]],
    area: Box,
) -> list[tuple[str, Point, str]]:
    """Draw what cameras see, under all that was drawn from an item on."""
    before = len(drawing.items)
    letters = draw_views(drawing, *seen, area)
    views = drawing.items[before:]
    del drawing.items[before:]
    drawing.items[under:under] = views
    return letters


def _boxes(view: PlanView, part: PlanPart, area: Box) -> tuple[Box, Box]:
    """Return the window on the sheet, and how far ink goes: beyond it where the room ends there."""
    a = view.at(part.window.x0, part.window.y1)
    b = view.at(part.window.x1, part.window.y0)
    sides = {side for side, _ in part.open_sides}
    window = Box(a.x, a.y, b.x, b.y)
    edge = Box(
        a.x if "west" in sides else area.x0,
        a.y if "north" in sides else area.y0,
        b.x if "east" in sides else area.x1,
        b.y if "south" in sides else area.y1,
    )
    return window, edge


def _apart(
    placed: tuple[PlacedThing, ...],
) -> tuple[tuple[PlacedThing, ...], tuple[PlacedThing, ...]]:
    """Part what has a place of its own from what would stand on another thing."""
    kept: list[PlacedThing] = []
    lost: list[PlacedThing] = []
    for one in placed:
        is_free = one.found_room and not any(one.box.meets(other.box) for other in kept)
        (kept if is_free else lost).append(one)
    return tuple(kept), tuple(lost)


def _depths(installation: Installation, lanes: dict[str, Lane]) -> dict[str, float]:
    """Return for each wall how much paper the runs beside it take, mm."""
    depths: dict[str, float] = {}
    for tag, lane in lanes.items():
        for wall in installation.containment[tag].walls:
            depths[wall] = max(depths.get(wall, 0.0), lane.far)
    return depths


def _name_openings(
    drawing: WindowDrawing, installation: Installation, view: PlanView, edge: Box
) -> list[Callout]:
    """Write the names of openings beside them, other words well clear; return those without room.

    A name has no tag, so that under other words it would read as their last line.
    """
    wanted = _opening_callouts(installation, view, edge)
    names, left = place_together(drawing.room, wanted, near_only=True)
    drawing.extend(names)
    for item in names:
        for part in item.parts:
            if isinstance(part, Text):
                drawing.room.take_solid(box_of(part).grown(NAME_CLEAR_MM))
    return left


def _opening_callouts(installation: Installation, view: PlanView, edge: Box) -> list[Callout]:
    callouts = []
    for wall in installation.walls.values():
        for i, opening in enumerate(wall.openings):
            at = opening_middle(view, wall, i)
            half = WALL_MM / view.scale / 2 + 0.3
            target = Box(at.x - half, at.y - half, at.x + half, at.y + half)
            if edge.holds(target):
                ident = f"plan-opening:{wall.name}:{i}"
                callouts.append(Callout(ident, "", (opening.name,), target))
    return callouts
