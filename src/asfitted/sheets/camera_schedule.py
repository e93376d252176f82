"""Camera schedule: place, picture, cable, supply and storage of every camera."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.schedule.camera_schedule import camera_schedule
from asfitted.sheets._table_pages import build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan

ORDER = 74
NOTES = (
    ("Height", "+3000 is 3000 mm from finished floor to the centre line"),
    ("Detail", "pixels per metre at the target distance; classes of BS EN 62676-4:2015"),
    ("V there", "at the camera: by night infra-red on; by day at most the supply, no load drawn"),
    ("Disk", "share of the recorder's disk for the days it is to keep, always recording, H.264"),
    ("(m)", "measured on site"),
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the schedule; none for a job without cameras."""
    table = camera_schedule(model)
    if not table.rows:
        return []
    return plan_table(
        key="camera-schedule",
        title="Camera schedule",
        table=table,
        section="Schedules",
        heading="Camera schedule",
        side_notes=NOTES,
        papers=("A4", "A3"),
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one page."""
    return build_table(plan)
