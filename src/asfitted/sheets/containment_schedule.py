"""Containment schedule: what each run is, how full, and how far from the other band."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.schedule.containment_schedule import containment_schedule
from asfitted.sheets._table_pages import build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan

ORDER = 72
READERS = ("second-electrician", "inspector")
NOTES = (
    ("Fill", "of the width of tray and basket, of the inside area of trunking, conduit and duct"),
    ("Least width", "next stock width that keeps a quarter free"),
    ("n/k", "the mass of some of its cables is not in the tables"),
    ("Crossings", "cross power and data at right angles, not less than 50 mm clear or divided"),
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the schedule; none where there is no containment."""
    table = containment_schedule(model)
    if not table.rows:
        return []
    return plan_table(
        key="containment-schedule",
        title="Containment schedule",
        table=table,
        section="Schedules",
        heading="Containment schedule",
        side_notes=NOTES,
        papers=("A4", "A3"),
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one page."""
    return build_table(plan)
