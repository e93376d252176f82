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
from asfitted.layout.elevation.panels import TablePanel
from asfitted.layout.elevation.schedule_sheet import (
    lay_out_schedules,
    page_of_table,
    schedule_pages,
)
from asfitted.layout.elevation.set_scale import SCALES
from asfitted.layout.elevation.sheet_titles import sheet_title
from asfitted.layout.elevation.view_title import scale_words
from asfitted.layout.elevation.wall_content import walls_with_content
from asfitted.layout.plan.plan_sheet import OUT
from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.sheets._plan_pages import OUT_KEY, out_left_over
from asfitted.sheets._table_pages import TablePage, build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.elevation.sheet_packing import PlannedSheet
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.layout.table import Table

ORDER = 30
LATE = 1  # it takes over a table that the plans had no room for
OUT_TITLE, OUT_HEADING = "Plans: things out in the room", "Things out in the room"
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
    more: tuple[TablePanel, ...] = ()  # tables of other sheets that find room here


def plan(model: Model) -> list[SheetPlan]:
    """Plan sheets for all walls that carry anything, then details and schedules."""
    job = _job(model)
    contents = walls_with_content(job.installation, job.results)
    out = out_left_over(model)
    if not contents:
        return _out_alone(out)
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
    if not walls.has_schedules:
        return [*plans, *_out_alone(out)]
    schedules = _schedule_plans(walls, job, out)
    has_out = any(OUT_KEY in one.also for one in schedules)
    return [*plans, *schedules, *([] if has_out else _out_alone(out))]


def _out_alone(table: Table | None) -> list[SheetPlan]:
    """Return the sheet of what stands out in the room, where nothing else has room for it."""
    if table is None:
        return []
    return plan_table(
        key=OUT_KEY, title=OUT_TITLE, table=table, section="Drawings", heading=OUT_TITLE
    )


def _schedule_plans(walls: ElevationSet, job: Job, out: Table | None) -> list[SheetPlan]:
    """Return the sheets of notes and tables; with one table more where it takes no sheet more."""
    notes, tables = schedule_words(walls, job, stand_in_numbers(job.installation))
    pages = schedule_pages(notes, tables, walls.paper)
    more: tuple[TablePanel, ...] = ()
    with_more = -1
    if out is not None:
        panel = TablePanel(OUT, OUT_HEADING, out)
        if schedule_pages(notes, (*tables, panel), walls.paper) == pages:
            more = (panel,)
            with_more = page_of_table(notes, (*tables, panel), OUT, walls.paper)
    plans = []
    for page in range(pages):
        of = f", part {page + 1} of {pages}" if pages > 1 else ""
        key = SCHEDULES if page == 0 else f"{SCHEDULES}/{page + 1}"
        title = f"Elevations: notes and schedules{of}"
        payload = SchedulePayload(walls, page, more)
        also = (OUT_KEY,) if page == with_more else ()
        plans.append(SheetPlan(key, title, walls.paper, "Schedules", payload, also=also))
    return plans


def _job(model: Model) -> Job:
    return Job(model.installation, model.results, model.symbols)


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out one elevation sheet, or a page of the notes and tables of all walls."""
    payload, job = plan.payload, _job(model)
    if isinstance(payload, TablePage):
        return build_table(plan)
    if isinstance(payload, SchedulePayload):
        words, tables = schedule_words(payload.walls, job, numbers)
        every = (*tables, *payload.more)
        items = lay_out_schedules(words, every, payload.page, payload.walls.paper)
        return Content(items, "Not to scale")
    walls, sheet = payload.walls, payload.sheet
    laid = draw_sheet(sheet, walls, job, numbers, links_of(job.installation, numbers))
    scales = {view.frame.scale for view in sheet.views}
    scale = scale_words(scales.pop(), walls.paper) if len(scales) == 1 else "As stated"
    notes = []
    if payload.scale >= SMALL and not sheet.is_details:
        notes.append(f"walls too high for 1:{SCALES[4]} on {walls.paper}: 1:{payload.scale} used")
    return Content(laid.items, scale, tuple(notes))
