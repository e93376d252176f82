"""The key plan sheet: the plan in the middle, legend at the right, notes at the foot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.callout import Callout
from asfitted.layout.callout_choice import place_together
from asfitted.layout.drawing import Drawing
from asfitted.layout.elevation.arrangement import USABLE, title_top
from asfitted.layout.elevation.panels import NotesPanel
from asfitted.layout.elevation.view_title import scale_bar, scale_words
from asfitted.layout.free_room import FreeRoom
from asfitted.layout.lettering import BODY, VIEW, box_of, text_item
from asfitted.layout.plan.declared_ends import declared_notes, draw_declared_ends
from asfitted.layout.plan.north import north_direction, north_items
from asfitted.layout.plan.plan_legend import LEGEND_MM, legend_and_table, where_words
from asfitted.layout.plan.plan_marks import (
    draw_room_name,
    draw_wall_mark,
    draw_wedges,
)
from asfitted.layout.plan.plan_places import place_things
from asfitted.layout.plan.plan_runs import draw_runs, lanes_of, run_boxes, upright_runs
from asfitted.layout.plan.plan_things import (
    draw_things,
    plan_things,
    things_off_plan,
)
from asfitted.layout.plan.plan_view import choose_view
from asfitted.layout.plan.plan_walls import draw_walls, opening_middle
from asfitted.layout.sheet_layout import Text
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from asfitted.layout.plan.plan_runs import Lane
    from asfitted.layout.plan.plan_view import PlanView
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.resolve.installation import Installation

DRAWN_HOW = "Runs one above the other are drawn side by side. Cables are not drawn one by one."
NAME_CLEAR_MM = 1.2
FOOT_MM = 12.0  # title and scale bar under the plan
AREA = Box(USABLE.x0, USABLE.y0, USABLE.x1 - LEGEND_MM - 8.0, title_top() - FOOT_MM - 3.0)


@dataclass(frozen=True)
class KeyPlan:
    """A laid-out key plan: its items, scale and what could not be tagged in its place."""

    items: tuple[Item, ...]
    scale: int
    unplaced: tuple[str, ...]


def lay_out_key_plan(model: Model, numbers: Numbers) -> KeyPlan:
    """Lay out the key plan of a job that has walls."""
    installation = model.installation
    things = plan_things(installation, model.symbols)
    outside = any(thing.position.outside for thing in things)
    view = choose_view(installation.walls.values(), AREA, has_outside=outside)
    drawing = Drawing(FreeRoom(AREA))
    for room in installation.rooms.values():
        draw_walls(drawing, view, installation, room)
    lanes = lanes_of(view, installation)
    run_callouts = draw_runs(drawing, view, installation, lanes)
    depths = _depths(installation, lanes)
    taken = run_boxes(view, installation, lanes)
    placed = place_things(view, installation, things, depths, taken)
    draw_wedges(drawing, view, installation, model.results, placed)
    callouts = draw_things(drawing, view, installation, placed)
    for wall in installation.walls.values():
        draw_wall_mark(drawing, view, wall, numbers, depths.get(wall.name, 0.0))
    for room in installation.rooms.values():
        draw_room_name(drawing, view, installation, room)
    callouts += [*run_callouts, *draw_declared_ends(drawing, view, installation)]
    left = _name_openings(drawing, installation, view)
    tags, more = place_together(drawing.room, [*callouts, *left])
    drawing.extend(tags)
    unplaced = tuple(callout.words for callout in more)
    items = [*drawing.items, *_foot(view)]
    first = next(iter(installation.rooms.values()))
    north = north_direction(installation, first)
    items += north_items("plan", Point(AREA.x0 + 185.0, title_top() - 8.0), north)
    items += legend_and_table(model)
    items += _notes(installation, where_words(model, numbers), unplaced)
    return KeyPlan(tuple(items), view.scale, unplaced)


def _depths(installation: Installation, lanes: dict[str, Lane]) -> dict[str, float]:
    """Return for each wall how much paper the runs beside it take, mm."""
    depths: dict[str, float] = {}
    for tag, lane in lanes.items():
        for wall in installation.containment[tag].walls:
            depths[wall] = max(depths.get(wall, 0.0), lane.far)
    return depths


def _name_openings(drawing: Drawing, installation: Installation, view: PlanView) -> list[Callout]:
    """Write the names of openings beside them, other words well clear; return those without room.

    A name has no tag, so that under other words it would read as their last line.
    """
    names, left = place_together(
        drawing.room, _opening_callouts(installation, view), near_only=True
    )
    drawing.extend(names)
    for item in names:
        for part in item.parts:
            if isinstance(part, Text):
                drawing.room.take_solid(box_of(part).grown(NAME_CLEAR_MM))
    return left


def _opening_callouts(installation: Installation, view: PlanView) -> list[Callout]:
    callouts = []
    for wall in installation.walls.values():
        for i, opening in enumerate(wall.openings):
            at = opening_middle(view, wall, i)
            half = 100.0 / view.scale / 2 + 0.3
            target = Box(at.x - half, at.y - half, at.x + half, at.y + half)
            callouts.append(Callout(f"plan-opening:{wall.name}:{i}", "", (opening.name,), target))
    return callouts


def _foot(view: PlanView) -> list[Item]:
    """Return title, scale and scale bar under the plan."""
    y = title_top() - 5.0
    items = [text_item("plan:title", "Key plan", Point(AREA.x0, y), VIEW, bold=True)]
    items.append(text_item("plan:scale", scale_words(view.scale), Point(AREA.x0 + 40.0, y)))
    return [*items, *scale_bar(Point(AREA.x0 + 68.0, y), view.scale)]


def _notes(installation: Installation, where: str, unplaced: tuple[str, ...]) -> tuple[Item, ...]:
    """Return the notes at the foot, left of the title block."""
    notes = [
        "Circle: letter of the wall, sheet of its elevation; its arrow points at the wall.",
        where,
        DRAWN_HOW,
    ]
    upright = upright_runs(installation)
    if upright:
        notes.append(f"Upright, seen on its elevation only: {', '.join(upright)}.")
    off = things_off_plan(installation)
    if off:
        notes.append(f"Not on this plan: {'; '.join(off)}.")
    notes += declared_notes(installation)
    if any(not room.north_wall for room in installation.rooms.values()):
        notes.append("North not recorded: the first wall of each room is drawn at its top.")
    if unplaced:
        notes.append(f"No room for a tag: {'; '.join(unplaced)}.")
    width = title_block_box("A3").x0 - 5.0 - USABLE.x0
    panel = NotesPanel(tuple(notes))
    at = Point(USABLE.x0, title_top() + 4.0 + BODY)
    return panel.items(at, width)
