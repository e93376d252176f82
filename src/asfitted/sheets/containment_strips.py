"""Containment unfolded: every run laid out along its length, with the table of its pieces."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.containment.section_pages import strips_with_marks
from asfitted.layout.containment.strip_pages import page_key
from asfitted.layout.sheet_model import Content, SheetPlan

if TYPE_CHECKING:
    from asfitted.layout.containment.strip_pages import StripPages
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 40
READERS = ("second-electrician", "inspector")


def plan(model: Model) -> list[SheetPlan]:
    """Plan as many sheets as the strips of all runs need."""
    pages = strips_with_marks(model)
    plans = []
    for page in range(pages.count):
        of = f", part {page + 1} of {pages.count}" if pages.count > 1 else ""
        title = f"Containment unfolded{of}"
        plans.append(SheetPlan(page_key(page), title, pages.paper, "Drawings", (pages, page)))
    return plans


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out one sheet of strips."""
    _ = model
    pages, page = plan.payload
    return Content(pages.items(page, numbers), _scale(pages, page))


def _scale(pages: StripPages, page: int) -> str:
    """Return the scale of a sheet: the one along all its strips, or that each says its own."""
    found = {(p.band.scale.along, p.band.scale.up) for p in pages.on(page)}
    if not found:
        return "Not to scale"
    along, up = min(found)
    is_one = len(found) == 1 and along == up
    return f"1:{along} @ {pages.paper.split()[0]}" if is_one else "As stated"
