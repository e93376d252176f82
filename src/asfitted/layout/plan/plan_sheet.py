"""One plan on its sheet: laid out before the sheets are numbered, finished when they are."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.elevation.panels import NotesPanel, TablePanel
from asfitted.layout.plan.camera_views import TABLE_TITLE, camera_table
from asfitted.layout.plan.declared_ends import declared_notes
from asfitted.layout.plan.north import north_direction, north_items
from asfitted.layout.plan.out_in_room import TITLE as OUT_TITLE
from asfitted.layout.plan.out_in_room import out_table
from asfitted.layout.plan.plan_body import PlanRoom, draw_plan
from asfitted.layout.plan.plan_foot import plan_foot
from asfitted.layout.plan.plan_legend import legend_of
from asfitted.layout.plan.plan_parts import scale_of
from asfitted.layout.plan.plan_runs import upright_runs
from asfitted.layout.plan.plan_scope import scoped
from asfitted.layout.plan.plan_things import things_off_plan
from asfitted.reference.cctv import PIXEL_DENSITY_EDITION

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.layout.plan.match_lines import MatchWords
    from asfitted.layout.plan.plan_frame import PlanFrame
    from asfitted.layout.plan.plan_marks import WallMark
    from asfitted.layout.plan.plan_parts import PlanPart
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.layout.table import Table
    from asfitted.resolve.installation import Installation

DRAWN_HOW = "Runs one above the other are drawn side by side. Cables are not drawn one by one."
NORTH_MM = 14.0
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
    scale = scale_of(part.window, part.room(frame.area))
    north = _north_at(frame)
    clear = Box(north.x, north.y, north.x, north.y).grown(NORTH_MM - 2.0)
    drawn = draw_plan(model, part, PlanRoom(frame.area, scale, clear), keys)
    column, left_over = _column(model, frame, _panels(model, drawn.things, drawn.keynotes))
    items = (*drawn.items, *_foot(frame, installation, scale, title), *column)
    notes = _notes(installation, part, has_keynotes=drawn.keynotes is not None)
    return LaidOutPlan(
        part,
        frame,
        scale,
        title,
        items,
        drawn.marks,
        drawn.matches,
        notes,
        left_over,
        drawn.unplaced,
    )


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
