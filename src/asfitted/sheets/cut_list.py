"""Cut list: each new cable with the sum of its length."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.schedule.cut_list import cut_list
from asfitted.sheets._table_pages import build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan

ORDER = 75
NOTES = (
    ("Before cutting", "walk the route and check the longest leg with a tape"),
    ("Label", "both ends with the cable tag before pulling in"),
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the list; none where nothing is to be cut."""
    table = cut_list(model)
    if not table.rows:
        return []
    return plan_table(
        key="cut-list",
        title="Cut list",
        table=table,
        section="Schedules",
        heading="Cut list",
        side_notes=NOTES,
        papers=("A4", "A4 portrait"),
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one page."""
    return build_table(plan)
