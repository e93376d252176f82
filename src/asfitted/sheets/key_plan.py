"""The key plan: rooms from above, and which sheet shows which wall."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.elevation.view_title import scale_words
from asfitted.layout.plan.key_plan_sheet import lay_out_key_plan
from asfitted.layout.plan.out_in_room import TITLE
from asfitted.layout.plan.plan_legend import OUT_KEY, table_left_over
from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.sheets._table_pages import TablePage, build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 20


def plan(model: Model) -> list[SheetPlan]:
    """Plan one key plan for a job that has walls, and a sheet for a table without room on it."""
    if not model.installation.walls:
        return []
    plans = [SheetPlan("key-plan", "Key plan", "A3", "Drawings")]
    table = table_left_over(model)
    if table is not None:
        title = f"Key plan: {TITLE.lower()}"
        plans += plan_table(
            key=OUT_KEY, title=title, table=table, section="Schedules", heading=title
        )
    return plans


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out the key plan, or a page of its table."""
    if isinstance(plan.payload, TablePage):
        return build_table(plan)
    laid_out = lay_out_key_plan(model, numbers)
    return Content(laid_out.items, scale_words(laid_out.scale))
