"""Cut list: each new cable with the sum of its length, then what each reel and bar is cut into."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.schedule.cut_list import cut_list
from asfitted.layout.schedule.cutting_plan import cutting_plan_table
from asfitted.sheets._table_pages import build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan

ORDER = 75
READERS = ("second-electrician",)
NOTES = (
    ("Before cutting", "walk the route and check the longest leg with a tape"),
    ("Label", "both ends with the cable tag before pulling in"),
)
PLAN_NOTES = (
    ("Runs", "corner to corner: trim for the fittings; whole bars first, one rest a straight"),
    ("Least order", "proved where no way of cutting orders less; a gap says how far that is open"),
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the list and the cutting plan; none where nothing is to be cut."""
    plans: list[SheetPlan] = []
    table = cut_list(model)
    if table.rows:
        plans += plan_table(
            key="cut-list",
            title="Cut list",
            table=table,
            section="Schedules",
            heading="Cut list",
            side_notes=NOTES,
            papers=("A4", "A4 portrait"),
        )
    stock = cutting_plan_table(model)
    if stock.rows:
        plans += plan_table(
            key="cutting-plan",
            title="Cutting plan: reels and bars",
            table=stock,
            section="Schedules",
            heading="Cutting plan: reels and bars",
            side_notes=PLAN_NOTES,
            papers=("A4", "A4 portrait"),
        )
    return plans


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one page."""
    return build_table(plan)
