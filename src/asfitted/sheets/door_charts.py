"""Door charts: one A4 for each board, fit to go inside its door."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.layout.schedule.door_chart import door_chart, header_lines
from asfitted.sheets._table_pages import build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Paper
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan
    from asfitted.resolve.installation import Board

ORDER = 60


def plan(model: Model) -> list[SheetPlan]:
    """Plan the chart of every board: one page, landscape if it holds all ways, else portrait."""
    plans: list[SheetPlan] = []
    for board in model.installation.boards.values():
        flat = _chart(board, model, "A4")
        upright = flat if len(flat) == 1 else _upright(board, model, flat)
        plans += upright if len(upright) < len(flat) else flat
    return plans


def _upright(board: Board, model: Model, otherwise: list[SheetPlan]) -> list[SheetPlan]:
    """Return the chart on an upright page, or the other one where its words are too wide."""
    try:
        return _chart(board, model, "A4 portrait")
    except DoesNotFitError:
        return otherwise


def _chart(board: Board, model: Model, paper: Paper) -> list[SheetPlan]:
    return plan_table(
        key=f"door-chart/{board.tag}",
        title=f"Door chart {board.tag}",
        table=door_chart(board, model),
        section="Schedules",
        heading=f"{board.tag}: what each way feeds",
        side_notes=header_lines(board, model),
        paper=paper,
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one chart."""
    return build_table(plan)
