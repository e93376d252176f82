"""Line widths of another paper: the diagram is inked in those of A3."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.layout.linework import widths_for
from asfitted.layout.sheet_layout import Circle, Path, SymbolUse

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.layout.sheet_layout import Item, Paper, Primitive, Stroke


def for_paper(items: Iterable[Item], paper: Paper) -> list[Item]:
    """Return items with the group of line widths of a paper (ISO 128)."""
    drawn, wanted = widths_for("A3"), widths_for(paper)
    names = ("narrow", "wide", "extra_wide", "symbol")
    widths = {getattr(drawn, name): getattr(wanted, name) for name in names}
    return [replace(i, parts=tuple(_thinned(p, widths) for p in i.parts)) for i in items]


def _thinned(part: Primitive, widths: dict[float, float]) -> Primitive:
    if isinstance(part, SymbolUse):
        return replace(part, width_mm=widths.get(part.width_mm, part.width_mm))
    if isinstance(part, Path | Circle) and part.stroke is not None:
        return replace(part, stroke=_stroke(part.stroke, widths))
    return part


def _stroke(stroke: Stroke, widths: dict[float, float]) -> Stroke:
    return replace(stroke, width_mm=widths.get(stroke.width_mm, stroke.width_mm))
