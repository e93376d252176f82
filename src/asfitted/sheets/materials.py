"""Materials: everything to order, how it was counted, and its price where a list is given."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.schedule.materials import materials_table, price_notes
from asfitted.sheets._table_pages import build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan

ORDER = 77
READERS = ("second-electrician",)
IN_HANDOVER = False  # prices are not for the client
NOTES = (
    ("Counted", "from the drawn runs and routes; what is common practice says so"),
    ("Not counted", "earthing, meter tails, sleeving, small screws, what comes with machines"),
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the list; none where there is nothing to order."""
    table = materials_table(model)
    if not table.rows:
        return []
    return plan_table(
        key="materials",
        title="Materials",
        table=table,
        section="Schedules",
        heading="Materials",
        side_notes=(*NOTES, *price_notes(model), *_left_out(model)),
        papers=("A4 portrait", "A4"),
    )


def _left_out(model: Model) -> tuple[tuple[str, str], ...]:
    off = model.results.take_off
    count = len(off.left_out) if off is not None else 0
    if not count:
        return ()
    things = "one thing" if count == 1 else f"{count} things"
    return (("Incomplete", f"{things} could not be counted: see the cut list and design check"),)


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one page."""
    return build_table(plan)
