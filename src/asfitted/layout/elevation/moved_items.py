"""Items moved on the sheet as a whole."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.geometry import Box
from asfitted.layout.sheet_layout import Circle, Path, Picture

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.layout.sheet_layout import Item, Primitive


def moved_items(items: Iterable[Item], dx: float, dy: float, prefix: str = "") -> tuple[Item, ...]:
    """Return items moved by (dx, dy) mm; ``prefix`` is put before their idents."""
    return tuple(
        replace(i, ident=f"{prefix}{i.ident}", parts=tuple(_moved(p, dx, dy) for p in i.parts))
        for i in items
    )


def _moved(part: Primitive, dx: float, dy: float) -> Primitive:
    if isinstance(part, Path):
        return replace(part, points=tuple(p.moved(dx, dy) for p in part.points))
    if isinstance(part, Circle):
        return replace(part, centre=part.centre.moved(dx, dy))
    if isinstance(part, Picture):
        box = part.box
        return replace(part, box=Box(box.x0 + dx, box.y0 + dy, box.x1 + dx, box.y1 + dy))
    return replace(part, at=part.at.moved(dx, dy))
