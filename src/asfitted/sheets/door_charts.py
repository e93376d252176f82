"""Door charts: one A4 for each board, fit to go inside its door."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.schedule.door_chart import door_chart, header_lines
from asfitted.sheets._table_pages import build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan

ORDER = 60


def plan(model: Model) -> list[SheetPlan]:
    """Plan the chart of every board: one page, landscape if it holds all ways, else upright."""
    plans: list[SheetPlan] = []
    for board in model.installation.boards.values():
        plans += plan_table(
            key=f"door-chart/{board.tag}",
            title=f"Door chart {board.tag}",
            table=door_chart(board, model),
            section="Schedules",
            heading=f"{board.tag}: what each way feeds",
            side_notes=header_lines(board, model),
            papers=("A4", "A4 portrait"),
        )
    return plans


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one chart."""
    return build_table(plan)
