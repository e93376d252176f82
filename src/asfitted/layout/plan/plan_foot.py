"""Title under a plan, its scale, and a scale bar that stays true when the sheet is resized."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY, VIEW, text_item, view_heading
from asfitted.layout.linework import rectangle, widths_for
from asfitted.layout.sheet_layout import Item

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Paper

W = widths_for("A3")
STEPS_M = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0)
LEAST_STEP_MM, STEPS = 9.0, 4


def plan_foot(title: str, at: Point, width_mm: float, scale: int, paper: Paper) -> list[Item]:
    """Return title, scale and bar on one line from a point on their baseline.

    The title is shortened where the line is wider than ``width_mm``.
    """
    scales = f"1:{scale} @ {paper.split()[0]}"
    step_m = next((s for s in STEPS_M if s * 1000 / scale >= LEAST_STEP_MM), STEPS_M[-1])
    step = step_m * 1000 / scale
    end = f"{STEPS * step_m:g} m"
    behind = text_width_mm(scales, BODY) + STEPS * step + text_width_mm(end, BODY) + 19.0
    words = view_heading(title, width_mm - behind)
    x = at.x + text_width_mm(words, VIEW, bold=True) + 8.0
    items = [
        text_item("plan:title", words, at, VIEW, bold=True),
        text_item("plan:scale", scales, Point(x, at.y)),
    ]
    x += text_width_mm(scales, BODY) + 8.0
    boxes = tuple(
        rectangle(
            Box(x + i * step, at.y - 1.6, x + (i + 1) * step, at.y),
            width_mm=W.narrow,
            fill="black" if i % 2 == 0 else "white",
        )
        for i in range(STEPS)
    )
    items.append(Item("scale-bar", "dim", boxes, title=f"steps of {step_m:g} m"))
    items.append(text_item("scale-bar:end", end, Point(x + STEPS * step + 2.0, at.y)))
    return items
