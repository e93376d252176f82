"""The north arrow, or the words that north is not recorded."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.lettering import TAG, text_item
from asfitted.layout.sheet_layout import Circle, Item, Path, Stroke

if TYPE_CHECKING:
    from asfitted.resolve.installation import Installation, Room

RADIUS = 4.5


def north_direction(installation: Installation, room: Room) -> Point | None:
    """Return the unit vector towards north on the sheet (y down), or None when not recorded."""
    wall = installation.walls.get(room.north_wall)
    if wall is None:
        return None
    return Point(-wall.inward.x, wall.inward.y)


def north_items(ident: str, centre: Point, north: Point | None) -> tuple[Item, ...]:
    """Return a ring with an arrow towards north and its letter, or words without an arrow."""
    if north is None:
        lines = ("north", "not", "recorded")
        return tuple(
            text_item(f"{ident}:north:{i}", w, centre.moved(dy=i * 4.1 - 3.0), anchor="middle")
            for i, w in enumerate(lines)
        )
    length = math.hypot(north.x, north.y)
    ux, uy = north.x / length, north.y / length
    tip = centre.moved(ux * RADIUS, uy * RADIUS)
    left = centre.moved(-ux * RADIUS * 0.8 - uy * 2.2, -uy * RADIUS * 0.8 + ux * 2.2)
    right = centre.moved(-ux * RADIUS * 0.8 + uy * 2.2, -uy * RADIUS * 0.8 - ux * 2.2)
    notch = centre.moved(-ux * RADIUS * 0.4, -uy * RADIUS * 0.4)
    parts = (
        Circle(centre, RADIUS, Stroke(0.25)),
        Path((tip, left, notch), Stroke(0.25), closed=True, fill="black"),
        Path((tip, right, notch), Stroke(0.25), closed=True, fill="white"),
    )
    at = centre.moved(ux * (RADIUS + 3.4), uy * (RADIUS + 3.4) + TAG / 2)
    return (
        Item(f"{ident}:north", "outline", parts),
        text_item(f"{ident}:north:letter", "N", at, TAG, anchor="middle", bold=True),
    )
