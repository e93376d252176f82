"""Cable schedule: every cable with its ends, size, containment, figures and cut length."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.document.to_choose import tail_words
from asfitted.layout.schedule.cable_schedule import cable_schedule
from asfitted.sheets._table_pages import build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan

ORDER = 70
READERS = ("second-electrician", "inspector")
NOTES = (
    ("Length", "drawn route with tails at both ends; (m) measured on site"),
    ("Cut", "with gland waste and allowance, rounded up: see the cut list"),
    ("Drop", "from the origin to the far end, per cent of nominal voltage"),
    ("Ib, Iz", "design current; capacity as installed, for terminals at 70 °C unless declared"),
    (
        "Method, group",
        (
            "reference method and circuits grouped at the worst place; free air: the table of "
            "flexible cable, which has no column for conduit: Iz there is not checked"
        ),
    ),
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the schedule; none where no cable is known."""
    table = cable_schedule(model)
    if not table.rows:
        return []
    return plan_table(
        key="cable-schedule",
        title="Cable schedule",
        table=table,
        section="Schedules",
        heading="Cable schedule",
        side_notes=(*NOTES, *_tails(model)),
        papers=("A4", "A3"),
    )


def _tails(model: Model) -> tuple[tuple[str, str], ...]:
    """Return the note on what goes on from a fused connection unit, where no cable does."""
    words = tail_words(model.installation)
    return (("Not in this list", words),) if words else ()


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one page."""
    return build_table(plan)
