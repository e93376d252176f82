"""The plan at a scale on a sheet: building coordinates (x east, y north) to the sheet (y down)."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.resolve.installation import Wall

SCALES = (25, 50, 100, 200, 500)
MARGIN_MM = 20.0  # round the walls, for what stands outside and for callouts
LEAST_MARGIN_MM = 11.0  # where nothing stands outside
WALL_MM = 100.0  # nominal thickness, drawn outwards: thickness is not surveyed


@dataclass(frozen=True)
class PlanView:
    """Scale and place of the plan: ``origin`` is where (0, 0) of the building lies on the sheet."""

    scale: int
    origin: Point

    def at(self, x_mm: float, y_mm: float) -> Point:
        """Return a place of the building on the sheet."""
        return Point(self.origin.x + x_mm / self.scale, self.origin.y - y_mm / self.scale)

    def on_wall(self, wall: Wall, along_mm: float, depth: float) -> Point:
        """Return a place by a wall: so far along it, so many mm of paper into the room."""
        p = self.at(
            wall.start.x + wall.direction.x * along_mm, wall.start.y + wall.direction.y * along_mm
        )
        return p.moved(wall.inward.x * depth, -wall.inward.y * depth)


def choose_view(walls: Iterable[Wall], area: Box, *, has_outside: bool) -> PlanView:
    """Return the largest scale at which all walls with their margins fit, centred in the area."""
    margin = MARGIN_MM if has_outside else LEAST_MARGIN_MM
    points = [w.start for w in walls]
    x0, x1 = min(p.x for p in points), max(p.x for p in points)
    y0, y1 = min(p.y for p in points), max(p.y for p in points)
    scale = next(
        (
            s
            for s in SCALES
            if (x1 - x0) / s + 2 * MARGIN_MM <= area.width
            and (y1 - y0) / s + 2 * margin <= area.height
        ),
        SCALES[-1],
    )
    middle = area.centre
    origin = Point(middle.x - (x0 + x1) / 2 / scale, middle.y + (y0 + y1) / 2 / scale)
    return PlanView(scale, origin)


def view_of_window(window: Box, scale: int, area: Box) -> PlanView:
    """Return a window of the building (mm, y north) at a scale, in the middle of an area."""
    x, y = (window.x0 + window.x1) / 2, (window.y0 + window.y1) / 2
    middle = area.centre
    return PlanView(scale, Point(middle.x - x / scale, middle.y + y / scale))
