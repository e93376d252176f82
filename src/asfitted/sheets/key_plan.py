"""The key plan: rooms from above, and which sheet shows which wall."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.elevation.view_title import scale_words
from asfitted.layout.plan.key_plan_sheet import lay_out_key_plan
from asfitted.layout.sheet_model import Content, SheetPlan

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 20


def plan(model: Model) -> list[SheetPlan]:
    """Plan one key plan for a job that has walls."""
    if not model.installation.walls:
        return []
    return [SheetPlan("key-plan", "Key plan", "A3", "Drawings")]


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out the key plan."""
    _ = plan
    laid_out = lay_out_key_plan(model, numbers)
    return Content(laid_out.items, scale_words(laid_out.scale))
