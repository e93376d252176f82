"""The key plan: all of a small job from above, or an overview of the storeys of a larger one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.plan.overview import lay_out_overview
from asfitted.layout.plan.plan_set import KEY_PLAN, plan_set
from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.sheets._plan_pages import build_plan, plan_pages

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 20


def plan(model: Model) -> list[SheetPlan]:
    """Plan the key plan of a job that has walls; with tables where they find no room on it."""
    if not model.installation.walls:
        return []
    plans = plan_set(model)
    if plans.is_one:
        return plan_pages(model, plans)
    paper = plans.frame.paper
    return [SheetPlan(KEY_PLAN, "Key plan", paper, "Drawings", plans)]


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out the key plan, or a page that belongs to it."""
    made = build_plan(plan, model, numbers)
    if made is not None:
        return made
    overview = lay_out_overview(model, plan.payload, numbers)
    return Content(overview.items, overview.scale_words)
