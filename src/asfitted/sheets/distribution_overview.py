"""Distribution overview: the intake with its earthing, and every board as a box in a tree.

It stands before the single-line diagram of a job with several boards, or with one that needs
several sheets.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.layout.single_line.intake import box_intake_items
from asfitted.layout.single_line.overview_ink import overview_items
from asfitted.layout.single_line.paper_widths import for_paper
from asfitted.layout.single_line.placing import NOTES_GAP_MM, place_diagram
from asfitted.layout.single_line.side import items_from, reference_items

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.layout.single_line.overview_parts import PlacedOverview
    from asfitted.layout.single_line.placing import PlacedDiagram

ORDER = 10


@dataclass(frozen=True)
class OverviewSheet:
    """One sheet with the whole diagram round it, for references between sheets."""

    diagram: PlacedDiagram
    page: PlacedOverview


def plan(model: Model) -> list[SheetPlan]:
    """Plan the overview: none for a job whose single-line diagram is one sheet with its intake."""
    if not model.installation.boards:
        return []
    diagram = place_diagram(model)
    count = len(diagram.overview)
    return [
        SheetPlan(
            page.key,
            "Distribution overview" + (f", part {i} of {count}" if count > 1 else ""),
            page.room.paper,
            "Drawings",
            OverviewSheet(diagram, page),
        )
        for i, page in enumerate(diagram.overview, start=1)
    ]


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out one sheet of the overview."""
    payload: OverviewSheet = plan.payload
    page, diagram = payload.page, payload.diagram
    items = overview_items(model, page, diagram, numbers)
    if page.has_intake:
        root = next(box for box in page.boxes if box.box.x0 == page.room.area.x0)
        items += box_intake_items(model, page.room.area, root.box)
    if diagram.notes_key == page.key:
        items += items_from(model, diagram.all_shown, page.foot_y + NOTES_GAP_MM) or []
    else:
        items += reference_items(numbers.of(diagram.notes_key), plan.paper)
    return Content(tuple(for_paper(items, plan.paper)))
