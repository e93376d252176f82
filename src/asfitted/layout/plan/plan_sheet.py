"""One plan on its sheet: laid out before the sheets are numbered, finished when they are."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.callout import Callout
from asfitted.layout.callout_choice import place_together
from asfitted.layout.elevation.panels import NotesPanel, TablePanel
from asfitted.layout.free_room import FreeRoom
from asfitted.layout.lettering import box_of
from asfitted.layout.plan.camera_views import TABLE_TITLE, camera_table, draw_views, write_letters
from asfitted.layout.plan.clipping import WindowDrawing
from asfitted.layout.plan.declared_ends import declared_notes, draw_declared_ends
from asfitted.layout.plan.keynotes import place_keynotes
from asfitted.layout.plan.match_lines import draw_match_lines
from asfitted.layout.plan.north import north_direction, north_items
from asfitted.layout.plan.out_in_room import TITLE as OUT_TITLE
from asfitted.layout.plan.out_in_room import out_table
from asfitted.layout.plan.passages import draw_passages
from asfitted.layout.plan.plan_foot import plan_foot
from asfitted.layout.plan.plan_legend import legend_of
from asfitted.layout.plan.plan_marks import draw_room_name, draw_wall_mark
from asfitted.layout.plan.plan_parts import scale_of
from asfitted.layout.plan.plan_places import place_things
from asfitted.layout.plan.plan_runs import draw_runs, lanes_of, run_boxes, upright_runs
from asfitted.layout.plan.plan_scope import scoped
from asfitted.layout.plan.plan_things import draw_things, plan_things, things_off_plan
from asfitted.layout.plan.plan_view import WALL_MM, view_of_window
from asfitted.layout.plan.plan_walls import draw_walls, opening_middle
from asfitted.layout.sheet_layout import Text
from asfitted.reference.cctv import PIXEL_DENSITY_EDITION

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.layout.plan.match_lines import MatchWords
    from asfitted.layout.plan.plan_frame import PlanFrame
    from asfitted.layout.plan.plan_marks import WallMark
    from asfitted.layout.plan.plan_parts import PlanPart
    from asfitted.layout.plan.plan_runs import Lane
    from asfitted.layout.plan.plan_things import PlacedThing
    from asfitted.layout.plan.plan_view import PlanView
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.layout.table import Table
    from asfitted.resolve.installation import Installation, Wall

DRAWN_HOW = "Runs one above the other are drawn side by side. Cables are not drawn one by one."
NAME_CLEAR_MM = 1.2
NORTH_MM = 14.0
REACH_MM = 42.0  # longest leader: further off a number in a ring reads better
COLUMN_GAP_MM = 6.0
KEYNOTE_TITLE = "Tags by number"
KEYNOTES, VIEWS, OUT = "keynotes", "views", "out-in-room"


@dataclass(frozen=True)
class LaidOutPlan:
    """A laid-out plan: all but what needs sheet numbers.

    ``left_over`` are names and tables that found no room beside the plan; ``unplaced`` the words
    that found room neither as a tag nor as a number.
    """

    part: PlanPart
    frame: PlanFrame
    scale: int
    title: str
    items: tuple[Item, ...]
    marks: tuple[WallMark, ...]
    matches: tuple[MatchWords, ...]
    notes: tuple[str, ...]
    left_over: tuple[tuple[str, Table], ...]
    unplaced: tuple[str, ...]

    @property
    def scale_words(self) -> str:
        """Scale with the paper it is true on."""
        return f"1:{self.scale} @ {self.frame.paper.split()[0]}"

    def finished(self, numbers: Numbers, more: tuple[str, ...] = ()) -> tuple[Item, ...]:
        """Return all items, the sheets being numbered; ``more`` are notes that tell of sheets."""
        made = [*self.items]
        for mark in self.marks:
            made += mark.items(numbers)
        made += [words.item(numbers) for words in self.matches]
        return (*made, *notes_items(self.frame, (*self.notes[:1], *more, *self.notes[1:])))


def notes_items(frame: PlanFrame, notes: tuple[str, ...]) -> tuple[Item, ...]:
    """Return as many notes as have room left of the title block."""
    box = frame.notes
    kept = list(notes)
    while kept:
        panel = NotesPanel(tuple(kept))
        height = panel.height(box.width)
        if box.width > 100.0 and height is not None and height <= box.height:
            return panel.items(Point(box.x0, box.y0 + 2.0), box.width)
        kept.pop()
    return ()


def lay_out_plan(
    model: Model, part: PlanPart, frame: PlanFrame, title: str, keys: Mapping[int, str]
) -> LaidOutPlan:
    """Lay out one plan.

    Args:
        model: the whole job.
        part: what of it this plan shows.
        frame: how the sheet is divided.
        title: words under the plan.
        keys: key of the sheet of each part, by its number.
    """
    model = scoped(model, part)
    installation = model.installation
    area = frame.area
    scale = scale_of(part.window, part.room(area))
    view = view_of_window(part.window, scale, part.room(area))
    window, edge = _boxes(view, part, area)
    drawing = WindowDrawing(FreeRoom(area), window=edge)
    north = _north_at(frame)
    drawing.room.take_solid(Box(north.x, north.y, north.x, north.y).grown(NORTH_MM - 2.0))
    for room in installation.rooms.values():
        draw_walls(drawing, view, installation, room)
    things = plan_things(installation, model.symbols)
    lanes = lanes_of(view, installation)
    depths = _depths(installation, lanes)
    taken = run_boxes(view, installation, lanes)
    whole = place_things(view, installation, things, depths, taken, within=edge)
    placed, undrawn = _apart(whole)
    under = len(drawing.items)
    run_callouts = draw_runs(drawing, view, installation, lanes, edge)
    passages = draw_passages(drawing, view, installation)
    matches = draw_match_lines(drawing, part, window, dict(keys))
    callouts = draw_things(drawing, view, installation, placed, depths)
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
    letters = _views_underneath(drawing, under, (view, model, placed), area)
    write_letters(drawing, letters)
    for room in installation.rooms.values():
        draw_room_name(drawing, view, installation, room, window)
    callouts += [*run_callouts, *passages, *draw_declared_ends(drawing, view, installation)]
    left = _name_openings(drawing, installation, view, edge)
    tags, more = place_together(drawing.room, [*callouts, *left], reach=REACH_MM)
    drawing.extend(tags)
    keynotes = place_keynotes(drawing, more, things, [one.thing for one in undrawn])
    panels = _panels(model, things, keynotes)
    column, left_over = _column(model, frame, panels)
    items = (*drawing.items, *_foot(frame, installation, scale, title), *column)
    unplaced = tuple(callout.words for callout in more)
    kept = tuple(mark for mark in marks if mark is not None)
    notes = _notes(installation, part, has_keynotes=keynotes is not None)
    return LaidOutPlan(part, frame, scale, title, items, kept, matches, notes, left_over, unplaced)


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


def _panels(
    model: Model, things: tuple[object, ...], keynotes: Table | None
) -> list[tuple[str, str, Table]]:
    """Return the tables that go with a plan: ident, title, table; the most needed first."""
    cameras = camera_table(model, things)  # type: ignore[arg-type]
    out = out_table(model.installation, model.results)
    found = (
        (KEYNOTES, KEYNOTE_TITLE, keynotes),
        (VIEWS, TABLE_TITLE, cameras),
        (OUT, OUT_TITLE, out),
    )
    return [(ident, title, table) for ident, title, table in found if table is not None]


def _column(
    model: Model, frame: PlanFrame, panels: list[tuple[str, str, Table]]
) -> tuple[tuple[Item, ...], tuple[tuple[str, Table], ...]]:
    """Return legend and tables in the column beside the plan, and the tables without room there."""
    if not frame.has_column:
        return (), tuple((ident, table) for ident, _, table in panels)
    box = frame.column
    legend = legend_of(model, Point(box.x0, box.y0), box.width)
    items = [*legend.items]
    y = box.y0 + legend.height_mm + COLUMN_GAP_MM
    left: list[tuple[str, Table]] = []
    for ident, title, table in panels:
        panel = TablePanel(ident, title, table)
        height = panel.height(box.width)
        if height is None or y + height > box.y1:
            left.append((ident, table))
            continue
        items += panel.items(Point(box.x0, y), box.width)
        y += height + COLUMN_GAP_MM
    return tuple(items), tuple(left)


def _foot(frame: PlanFrame, installation: Installation, scale: int, title: str) -> list[Item]:
    """Return title, scale and scale bar under the plan, and where north is."""
    area = frame.area
    width = area.width - 2 * NORTH_MM
    items = plan_foot(title, Point(area.x0, frame.foot - 2.0), width, scale, frame.paper)
    first = next(iter(installation.rooms.values()))
    north = north_direction(installation, first)
    return [*items, *north_items("plan", _north_at(frame), north)]


def _north_at(frame: PlanFrame) -> Point:
    return Point(frame.area.x1 - NORTH_MM / 2 - 2.0, frame.foot - 8.5)


def _notes(installation: Installation, part: PlanPart, *, has_keynotes: bool) -> tuple[str, ...]:
    """Return the notes of a plan, the most needed first."""
    notes = ["Circle: letter of the wall, sheet of its elevation; its arrow points at the wall."]
    if has_keynotes:
        notes.append(f"Number in a ring: see the table '{KEYNOTE_TITLE}'; a dash there: no ring.")
    notes.append(DRAWN_HOW)
    if any(device.kind == "camera" for device in installation.data_devices.values()):
        notes.append(
            f"Views ({PIXEL_DENSITY_EDITION}): X inspect and I identify (tinted), R recognise "
            "(strokes at its end), O observe, D detect; ended by the walls of the room, outside "
            "after 45 mm."
        )
    if installation.passages:
        notes.append("Crossed box: passage for cables through a wall or a floor.")
    upright = upright_runs(installation)
    if upright:
        notes.append(f"Upright, seen on its elevation only: {', '.join(upright)}.")
    off = things_off_plan(installation) if part.number == 1 else ()
    if off:
        notes.append(f"Not on this plan: {'; '.join(off)}.")
    notes += declared_notes(installation)
    if any(not room.north_wall for room in installation.rooms.values()):
        notes.append("North not recorded: the first wall of each room is drawn at its top.")
    return tuple(notes)
