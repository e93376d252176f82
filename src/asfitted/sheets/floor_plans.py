"""Floor plans: storey by storey, a sheet for each group of rooms that one sheet can show."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.errors import LayoutError
from asfitted.layout.plan.plan_set import plan_set
from asfitted.sheets._plan_pages import build_plan, plan_pages

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan

ORDER = 22


def plan(model: Model) -> list[SheetPlan]:
    """Plan the floor plans of a job that the key plan alone cannot show."""
    if not model.installation.walls:
        return []
    plans = plan_set(model)
    return [] if plans.is_one else plan_pages(model, plans)


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out one floor plan, or a page of its tables.

    Raises:
        LayoutError: the plan is none of these.
    """
    made = build_plan(plan, model, numbers)
    if made is None:
        raise LayoutError(f"{plan.key} is no floor plan")
    return made
