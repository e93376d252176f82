"""Elevations of every wall that carries anything, details, and sheets of their notes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.elevation.arrangement import SCHEDULES
from asfitted.layout.elevation.elevation_set import (
    ElevationSet,
    Job,
    draw_sheet,
    plan_set,
    schedule_words,
    stand_in_numbers,
)
from asfitted.layout.elevation.links import links_of
from asfitted.layout.elevation.schedule_sheet import lay_out_schedules, schedule_pages
from asfitted.layout.elevation.set_scale import SCALES
from asfitted.layout.elevation.sheet_titles import sheet_title
from asfitted.layout.elevation.view_title import scale_words
from asfitted.layout.elevation.wall_content import walls_with_content
from asfitted.layout.sheet_model import Content, SheetPlan

if TYPE_CHECKING:
    from asfitted.layout.elevation.sheet_packing import PlannedSheet
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 30
SMALL = 200  # beyond this scale the sheet says that it is small


@dataclass(frozen=True)
class WallPayload:
    """What the plan of an elevation sheet knows already."""

    sheet: PlannedSheet
    walls: ElevationSet

    @property
    def scale(self) -> int:
        """Scale of the walls on the sheet, the same for all of a room: 25 for 1:25."""
        return self.sheet.views[0].frame.scale


@dataclass(frozen=True)
class SchedulePayload:
    """One page of the notes and tables of all walls."""

    walls: ElevationSet
    page: int


def plan(model: Model) -> list[SheetPlan]:
    """Plan sheets for all walls that carry anything, then details and schedules."""
    job = _job(model)
    contents = walls_with_content(job.installation, job.results)
    if not contents:
        return []
    walls = plan_set(contents, job)
    plans = [
        SheetPlan(
            sheet.key,
            sheet_title(sheet),
            walls.paper,
            "Drawings",
            WallPayload(sheet, walls),
            also=tuple(view.content.key for view in sheet.views if view.content.key != sheet.key),
        )
        for sheet in walls.sheets
    ]
    if walls.has_schedules:
        words = schedule_words(walls, job, stand_in_numbers(job.installation))
        pages = schedule_pages(*words, walls.paper)
        for page in range(pages):
            of = f", part {page + 1} of {pages}" if pages > 1 else ""
            key = SCHEDULES if page == 0 else f"{SCHEDULES}/{page + 1}"
            title = f"Elevations: notes and schedules{of}"
            payload = SchedulePayload(walls, page)
            plans.append(SheetPlan(key, title, walls.paper, "Schedules", payload))
    return plans


def _job(model: Model) -> Job:
    return Job(model.installation, model.results, model.symbols)


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out one elevation sheet, or a page of the notes and tables of all walls."""
    payload, job = plan.payload, _job(model)
    if isinstance(payload, SchedulePayload):
        words = schedule_words(payload.walls, job, numbers)
        items = lay_out_schedules(*words, payload.page, payload.walls.paper)
        return Content(items, "Not to scale")
    walls, sheet = payload.walls, payload.sheet
    laid = draw_sheet(sheet, walls, job, numbers, links_of(job.installation, numbers))
    scales = {view.frame.scale for view in sheet.views}
    scale = scale_words(scales.pop(), walls.paper) if len(scales) == 1 else "As stated"
    notes = []
    if payload.scale >= SMALL and not sheet.is_details:
        notes.append(f"walls too high for 1:{SCALES[4]} on {walls.paper}: 1:{payload.scale} used")
    return Content(laid.items, scale, tuple(notes))
