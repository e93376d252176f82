"""Labels for both ends of each cable, each way and each device, to print and cut out.

The paper belongs to the labels: one line at its foot stands for frame and title block.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.brief.label_grid import PAPER, Grid, grid_for, label_items
from asfitted.layout.brief.label_words import cable_labels, device_labels, way_labels
from asfitted.layout.sheet_model import Content, SheetPlan

if TYPE_CHECKING:
    from asfitted.layout.brief.label_words import Label
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 79
READERS = ("second-electrician",)


@dataclass(frozen=True)
class LabelPage:
    """One sheet of labels."""

    labels: tuple[Label, ...]
    grid: Grid


def plan(model: Model) -> list[SheetPlan]:
    """Plan the sheets of cable, way and device labels.

    Raises:
        DoesNotFitError: the grid of the spec does not hold the labels.
    """
    plans: list[SheetPlan] = []
    for key, title, labels in (
        ("cables", "Labels: cable ends", cable_labels(model)),
        ("ways", "Labels: ways", way_labels(model)),
        ("devices", "Labels: boards and devices", device_labels(model)),
    ):
        if labels:
            plans += _pages(key, title, labels, model)
    return plans


def _pages(key: str, title: str, labels: tuple[Label, ...], model: Model) -> list[SheetPlan]:
    grid = grid_for(labels, model.installation.stock.labels)
    starts = range(0, len(labels), grid.count)
    plans = []
    for number, start in enumerate(starts, start=1):
        part = f", part {number} of {len(starts)}" if len(starts) > 1 else ""
        name = f"labels/{key}" if len(starts) == 1 else f"labels/{key}/{number}"
        page = LabelPage(labels[start : start + grid.count], grid)
        plans.append(SheetPlan(name, title + part, PAPER, "Schedules", page))
    return plans


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one sheet of labels."""
    page: LabelPage = plan.payload
    return Content(label_items(page.labels, page.grid), scale="1:1", is_framed=False)
