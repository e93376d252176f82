"""A part of a sheet while it is being drawn: its items, and the room that they leave."""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import pairwise
from typing import TYPE_CHECKING

from asfitted.geometry import Box
from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Circle, Item, Path, Picture, SymbolUse, Text

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.layout.free_room import FreeRoom
    from asfitted.layout.sheet_layout import Kind, Primitive


@dataclass
class Drawing:
    """Items in the order they are drawn. Whatever is added also takes its room."""

    room: FreeRoom
    items: list[Item] = field(default_factory=list)

    def add(self, item: Item) -> None:
        """Add an item and note the ink and words it holds."""
        self.items.append(item)
        for part in item.parts:
            self._take(part)

    def draw(
        self, ident: str, kind: Kind, *parts: Primitive, title: str = "", link: str = ""
    ) -> None:
        """Add an item made of these parts."""
        self.add(Item(ident, kind, tuple(parts), title=title, link=link))

    def extend(self, items: Iterable[Item]) -> None:
        """Add items whose room has been noted already, such as placed callouts."""
        self.items.extend(items)

    def _take(self, part: Primitive) -> None:
        if isinstance(part, Text):
            self.room.take_solid(box_of(part))
        elif isinstance(part, Circle):
            c, r = part.centre, part.radius_mm
            self.room.take_ink(Box(c.x - r, c.y - r, c.x + r, c.y + r))
        elif isinstance(part, SymbolUse):
            self.room.take_solid(
                Box(part.at.x, part.at.y, part.at.x + part.size_mm, part.at.y + part.size_mm)
            )
        elif isinstance(part, Picture):
            self.room.take_solid(part.box)
        else:
            self._take_path(part)

    def _take_path(self, path: Path) -> None:
        if path.fill in ("black", "grey") and path.closed:
            xs, ys = [p.x for p in path.points], [p.y for p in path.points]
            self.room.take_ink(Box(min(xs), min(ys), max(xs), max(ys)))
        if path.stroke is None:
            return
        points = (*path.points, path.points[0]) if path.closed else path.points
        for a, b in pairwise(points):
            self.room.take_line(a, b, path.stroke.width_mm)
