"""One elevation for each wall that carries anything, and a sheet of their tables when needed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.elevation.arrangement import SCHEDULES, arrange
from asfitted.layout.elevation.scale_choice import SCALES, choose_scale, tables_of_their_own
from asfitted.layout.elevation.schedule_sheet import lay_out_schedules, schedule_pages
from asfitted.layout.elevation.view_title import scale_words
from asfitted.layout.elevation.wall_content import walls_with_content
from asfitted.layout.sheet_model import Content, SheetPlan

if TYPE_CHECKING:
    from asfitted.layout.elevation.panels import TablePanel
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 30


@dataclass(frozen=True)
class WallPayload:
    """What the plan of an elevation knows already."""

    content: WallContent
    scale: int
    tables_elsewhere: bool


@dataclass(frozen=True)
class SchedulePayload:
    """One page of the tables of all walls."""

    tables: tuple[TablePanel, ...]
    page: int


def plan(model: Model) -> list[SheetPlan]:
    """Plan a sheet for each wall that carries anything, all at one scale."""
    installation, results = model.installation, model.results
    contents = walls_with_content(installation, results)
    if not contents:
        return []
    scale = choose_scale(contents, installation, results)
    tables = tables_of_their_own(contents, installation, results, scale)
    plans = [
        SheetPlan(
            f"elevation/{c.wall.name}",
            f"Elevation {c.wall.name}: {c.room.name}",
            "A3",
            "Drawings",
            WallPayload(c, scale, bool(tables)),
        )
        for c in contents
    ]
    if tables:
        pages = schedule_pages(tables)
        for page in range(pages):
            of = f", {page + 1} of {pages}" if pages > 1 else ""
            key = SCHEDULES if page == 0 else f"{SCHEDULES}/{page + 1}"
            title = f"Drops and contents of runs{of}"
            payload = SchedulePayload(tables, page)
            plans.append(SheetPlan(key, title, "A3", "Schedules", payload))
    return plans


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out one elevation, or a page of the tables of all walls."""
    payload = plan.payload
    if isinstance(payload, SchedulePayload):
        items = lay_out_schedules(payload.tables, payload.page)
        return Content(items, "Not to scale")
    sheet = arrange(
        payload.content,
        model.installation,
        model.results,
        numbers,
        scale=payload.scale,
        tables_elsewhere=numbers.of(SCHEDULES) if payload.tables_elsewhere else "",
    )
    notes = []
    if payload.scale == SCALES[-1]:
        notes.append(f"wall {payload.content.wall.name} is too long for 1:100 on A3: 1:200 used")
    return Content(sheet.items, scale_words(payload.scale), tuple(notes))
