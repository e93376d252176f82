"""Design check: every finding on paper, and what could not be checked said aloud."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.schedule.check_list import check_list
from asfitted.sheets._table_pages import build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan

ORDER = 90
READERS = ("second-electrician", "inspector")
NOTES = (
    ("error", "does not comply: put right before the work is energised"),
    ("warning", "needs a decision by the designer"),
    ("not checked", "a fact is missing; this is not a pass"),
    ("Clauses", "2018 numbering, not compared with A4:2026; figures: check in the book"),
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the list of findings; none when there is nothing to say."""
    table = check_list(model)
    if not table.rows:
        return []
    return plan_table(
        key="design-check",
        title="Design check",
        table=table,
        section="Calculations",
        heading="Design check",
        side_notes=NOTES,
        papers=("A4", "A4 portrait"),
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one page."""
    return build_table(plan)
