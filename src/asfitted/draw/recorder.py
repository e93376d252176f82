"""The structure of a sheet in words, one line for each primitive: what golden files hold.

A reader of a difference sees which item moved. Coordinates are rounded to 0.1 mm.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.sheet_layout import Circle, Path, Picture, Text

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Primitive, SheetLayout, Stroke, SymbolUse, Tone


def record(sheet: SheetLayout) -> list[str]:
    """Return the sheet as lines of text, in drawing order."""
    head = f"sheet {sheet.number} {sheet.name} | {sheet.title} | {sheet.paper} | {sheet.section}"
    notes = [f"note {note}" for note in sheet.notes]
    lines = [
        " ".join(filter(None, (item.kind, item.ident, item.net and f"net={item.net}", _told(part))))
        for item in sheet.items
        for part in item.parts
    ]
    return [head, *notes, *lines]


def _told(part: Primitive) -> str:
    if isinstance(part, Path):
        name = "polygon" if part.closed else "line"
        points = " ".join(_at(point) for point in part.points)
        return f"{name} {points}{_ink(part.stroke, part.fill)}"
    if isinstance(part, Circle):
        radius = _tenth(part.radius_mm)
        return f"circle {_at(part.centre)} r{radius}{_ink(part.stroke, part.fill)}"
    if isinstance(part, Text):
        return _text(part)
    if isinstance(part, Picture):
        corners = f"{_at(Point(part.box.x0, part.box.y0))} {_at(Point(part.box.x1, part.box.y1))}"
        return f"picture {corners} {len(part.png)} bytes"
    return _symbol(part)


def _text(text: Text) -> str:
    marks = [name for name in ("bold", "turned") if getattr(text, name)]
    if text.tone != "black":
        marks.append(text.tone)
    return " ".join(
        ["text", _at(text.at), text.anchor, f"h{text.cap_mm:g}", *marks, repr(text.text)]
    )


def _symbol(use: SymbolUse) -> str:
    marks = [f"turn{use.turn}"] if use.turn else []
    marks += ["mirrored"] if use.mirrored else []
    return " ".join(
        ["use", use.name, _at(use.at), f"size{use.size_mm:g}", f"w{use.width_mm:g}", *marks]
    )


def _ink(stroke: Stroke | None, fill: Tone | None) -> str:
    words = ""
    if stroke:
        words += f" w{stroke.width_mm:g}"
        words += "" if stroke.pattern == "continuous" else f" {stroke.pattern}"
        words += "" if stroke.tone == "black" else f" {stroke.tone}"
    return words + (f" fill={fill}" if fill else "")


def _at(point: Point) -> str:
    return f"{_tenth(point.x)},{_tenth(point.y)}"


def _tenth(value: float) -> str:
    return f"{round(value, 1) + 0.0:g}"
