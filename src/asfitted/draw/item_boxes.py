"""Where each item of a sheet lies: for links in the PDF and regions in the browser."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box
from asfitted.layout.sheet_layout import Circle, Path, Picture, Text, text_box

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Primitive, SheetLayout


def item_boxes(sheet: SheetLayout) -> dict[str, Box]:
    """Return the box (mm) round all ink of each item, by ident. Items without parts have none."""
    boxes: dict[str, Box] = {}
    for item in sheet.items:
        for part in item.parts:
            box = part_box(part)
            boxes[item.ident] = boxes[item.ident].joined(box) if item.ident in boxes else box
    return boxes


def part_box(part: Primitive) -> Box:
    """Return the box (mm) round the ink of one primitive; of a symbol its whole box."""
    if isinstance(part, Text):
        return text_box(part, text_width_mm(part.text, part.cap_mm, bold=part.bold))
    if isinstance(part, Path):
        xs, ys = [p.x for p in part.points], [p.y for p in part.points]
        half = part.stroke.width_mm / 2 if part.stroke else 0.0
        return Box(min(xs), min(ys), max(xs), max(ys)).grown(half)
    if isinstance(part, Circle):
        x, y = part.centre
        half = part.stroke.width_mm / 2 if part.stroke else 0.0
        return Box(x, y, x, y).grown(part.radius_mm + half)
    if isinstance(part, Picture):
        return part.box
    x, y = part.at
    return Box(x, y, x + part.size_mm, y + part.size_mm)
