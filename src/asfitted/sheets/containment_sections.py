"""Cross-sections of containment at the fullest pieces, every cable at its true size."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.containment.section_pages import section_key, section_pages
from asfitted.layout.containment.strip_pages import strip_pages
from asfitted.layout.sheet_model import Content, SheetPlan

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 42
READERS = ("second-electrician", "inspector")


def plan(model: Model) -> list[SheetPlan]:
    """Plan as many sheets as the cross-sections need."""
    pages = section_pages(model)
    plans = []
    for page in range(pages.count):
        of = f", part {page + 1} of {pages.count}" if pages.count > 1 else ""
        title = f"Cross-sections{of}" if of else "Cross-sections of containment"
        plans.append(SheetPlan(section_key(page), title, pages.paper, "Drawings", (pages, page)))
    return plans


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out one sheet of cross-sections."""
    pages, page = plan.payload
    items = pages.items(page, model, strip_pages(model), numbers)
    return Content(items, "As stated")
