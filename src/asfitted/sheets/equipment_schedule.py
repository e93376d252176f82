"""Equipment schedule: what is fixed where, how it is rated and what feeds it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.schedule.equipment_schedule import equipment_schedule
from asfitted.sheets._table_pages import build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan

ORDER = 76
NOTES = (
    ("Height", "+1300 is 1300 mm from finished floor to the centre line"),
    ("Before work", "isolate at what feeds it, lock off and prove dead at the thing itself"),
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the schedule; none where nothing is known."""
    table = equipment_schedule(model)
    if not table.rows:
        return []
    return plan_table(
        key="equipment-schedule",
        title="Equipment schedule",
        table=table,
        section="Schedules",
        heading="Equipment schedule",
        side_notes=NOTES,
        papers=("A4", "A3"),
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one page."""
    return build_table(plan)
