"""The mark of the firm as primitives: outlines in the inks of the sheet, or a picture."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.sheet_layout import Item, Path, Picture, Stroke

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Primitive
    from asfitted.spec.logo import Logo, LogoOutline

LEAST_LINE_MM = 0.13


def mark_box(logo: Logo, room: Box) -> Box:
    """Return where a mark stands: as large as its room lets it, at the right, in the middle."""
    scale = min(room.width / logo.width, room.height / logo.height)
    width, height = logo.width * scale, logo.height * scale
    top = room.centre.y - height / 2
    return Box(room.x1 - width, top, room.x1, top + height)


def mark_item(ident: str, logo: Logo, room: Box, title: str = "") -> Item:
    """Return the mark in its room, in proportion."""
    box = mark_box(logo, room)
    parts: tuple[Primitive, ...]
    if logo.png:
        parts = (Picture(logo.png, box),)
    else:
        scale = box.width / logo.width
        parts = tuple(_path(outline, box, scale) for outline in logo.outlines)
    return Item(ident, "outline", parts, title=title)


def _path(outline: LogoOutline, box: Box, scale: float) -> Path:
    points = tuple(Point(box.x0 + x * scale, box.y0 + y * scale) for x, y in outline.points)
    stroke = None
    if outline.line:
        tone = "grey" if outline.line == "tint" else outline.line
        stroke = Stroke(max(LEAST_LINE_MM, outline.line_width * scale), tone=tone)
    return Path(points, stroke, closed=outline.closed, fill=outline.fill)
