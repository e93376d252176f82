"""The part of a wall that one view shows, and what stands at its two sides."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from asfitted.layout.elevation.wall_view import WallPoint
    from asfitted.resolve.installation import Wall

EdgeKind = Literal["corner", "match", "cut"]
TOUCH_MM = 1.0


@dataclass(frozen=True)
class Edge:
    """One side of a view: a corner of the room, a match line, or the boundary of a detail.

    ``name`` is the wall round the corner, or the mark of the match line, "M1". ``beyond`` is the
    view that goes on there, when there is one.
    """

    kind: EdgeKind
    name: str = ""
    beyond: str = ""
    is_outer: bool = False  # an outer corner: the wall round it turns away from the viewer


@dataclass(frozen=True)
class Window:
    """What a view shows of its wall, mm from the left corner and above the floor."""

    from_mm: float
    to_mm: float
    low_mm: float
    high_mm: float
    left: Edge
    right: Edge
    is_detail: bool = False  # an enlarged part, with a boundary of its own

    @property
    def length_mm(self) -> float:
        """Length shown, mm."""
        return self.to_mm - self.from_mm

    @property
    def height_mm(self) -> float:
        """Height shown, mm."""
        return self.high_mm - self.low_mm

    def holds_along(self, along_mm: float) -> bool:
        """Tell whether a length from the corner belongs here; a place on a cut is on its right."""
        is_last = self.right.kind == "corner"
        return self.from_mm - TOUCH_MM * (self.left.kind == "corner") <= along_mm and (
            along_mm < self.to_mm or (is_last and along_mm <= self.to_mm + TOUCH_MM)
        )

    def holds(self, at: WallPoint) -> bool:
        """Tell whether a place of the wall is shown."""
        if self.is_detail:
            return self.from_mm <= at.along <= self.to_mm and self.low_mm <= at.up <= self.high_mm
        return self.holds_along(at.along)

    def reaches_floor(self) -> bool:
        """Tell whether the floor is its lower side."""
        return self.low_mm <= TOUCH_MM

    def reaches_ceiling(self, wall: Wall) -> bool:
        """Tell whether the ceiling is its upper side."""
        return self.high_mm >= wall.height_mm - TOUCH_MM


def whole_window(wall: Wall) -> Window:
    """Return the window of a whole wall, corners not named."""
    corner = Edge("corner")
    return Window(0.0, wall.length_mm, 0.0, wall.height_mm, corner, corner)
