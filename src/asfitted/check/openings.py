"""Whether a straight piece or a spot on a wall lies in one of its doors or windows."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.geometry import Point3
    from asfitted.resolve.installation import Opening, Wall


def _along_mm(wall: Wall, at: Point3) -> float:
    across = (at.x - wall.start.x) * wall.direction.x
    return across + (at.y - wall.start.y) * wall.direction.y


def opening_at(wall: Wall, along_mm: float, up_mm: float) -> Opening | None:
    """Return the opening that holds a spot, mm along the wall and up from the floor."""
    for gap in wall.openings:
        inside = gap.from_mm < along_mm < gap.from_mm + gap.width_mm
        if inside and gap.sill_mm < up_mm < gap.sill_mm + gap.height_mm:
            return gap
    return None


def opening_crossed(wall: Wall, start: Point3, end: Point3) -> Opening | None:
    """Return the first opening that an upright or level straight piece on the wall crosses."""
    left, right = sorted((_along_mm(wall, start), _along_mm(wall, end)))
    low, high = sorted((start.z, end.z))
    for gap in wall.openings:
        meets_across = left < gap.from_mm + gap.width_mm and right > gap.from_mm
        meets_up = low < gap.sill_mm + gap.height_mm and high > gap.sill_mm
        if meets_across and meets_up:
            return gap
    return None
