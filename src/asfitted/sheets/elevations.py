"""One elevation for each wall that carries anything, and a sheet of their notes when needed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.elevation.arrangement import SCHEDULES, arrange
from asfitted.layout.elevation.elevation_set import (
    SCALES,
    plan_set,
    schedule_words,
    stand_in_numbers,
)
from asfitted.layout.elevation.schedule_sheet import lay_out_schedules, schedule_pages
from asfitted.layout.elevation.view_title import scale_words
from asfitted.layout.elevation.wall_content import walls_with_content
from asfitted.layout.lettering import TAG, wrap
from asfitted.layout.sheet_model import Content, SheetPlan

if TYPE_CHECKING:
    from asfitted.layout.elevation.elevation_set import ElevationSet
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 30
TITLE_MM = 66.0  # width of the title in the title block, where it has two lines


@dataclass(frozen=True)
class WallPayload:
    """What the plan of an elevation knows already."""

    content: WallContent
    walls: ElevationSet

    @property
    def scale(self) -> int:
        """Scale of all walls, 25 for 1:25."""
        return self.walls.scale


@dataclass(frozen=True)
class SchedulePayload:
    """One page of the notes and tables of all walls."""

    walls: ElevationSet
    page: int


def plan(model: Model) -> list[SheetPlan]:
    """Plan a sheet for each wall that carries anything, all at one scale."""
    installation, results = model.installation, model.results
    contents = walls_with_content(installation, results)
    if not contents:
        return []
    walls = plan_set(contents, installation, results)
    plans = [
        SheetPlan(f"elevation/{c.wall.name}", _title(c), "A3", "Drawings", WallPayload(c, walls))
        for c in contents
    ]
    if walls.has_schedules:
        words = schedule_words(walls, installation, results, stand_in_numbers(installation))
        pages = schedule_pages(*words)
        for page in range(pages):
            of = f", part {page + 1} of {pages}" if pages > 1 else ""
            key = SCHEDULES if page == 0 else f"{SCHEDULES}/{page + 1}"
            title = f"Elevations: notes and schedules{of}"
            plans.append(SheetPlan(key, title, "A3", "Schedules", SchedulePayload(walls, page)))
    return plans


def _title(content: WallContent) -> str:
    """Return the title of a sheet, with the room where the title block has room for it."""
    name = content.wall.name
    whole = f"Elevation {name}: {content.room.name}"
    return whole if len(wrap(whole, TITLE_MM, TAG, bold=True)) <= 2 else f"Elevation {name}"


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out one elevation, or a page of the notes and tables of all walls."""
    payload = plan.payload
    installation, results = model.installation, model.results
    if isinstance(payload, SchedulePayload):
        words = schedule_words(payload.walls, installation, results, numbers)
        return Content(lay_out_schedules(*words, payload.page), "Not to scale")
    content, walls = payload.content, payload.walls
    schedules = numbers.of(SCHEDULES) if walls.has_schedules else ""
    drawn = walls.drawn(content, results, numbers)
    sheet = arrange(content, drawn, installation, results, numbers, schedules=schedules)
    notes = []
    if walls.scale == SCALES[-1]:
        notes.append(f"wall {content.wall.name} is too long for 1:100 on A3: 1:200 used")
    return Content(sheet.items, scale_words(walls.scale), tuple(notes))
