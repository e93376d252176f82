"""Points and boxes in millimetres.

On a sheet x runs right and y runs DOWN from the trimmed top left corner. In the building x runs
east and y north on plan and z up from finished floor level.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import NamedTuple


class Point(NamedTuple):
    """A point in a plane, mm."""

    x: float
    y: float

    def moved(self, dx: float = 0.0, dy: float = 0.0) -> Point:
        """Return the point moved by (dx, dy) mm."""
        return Point(self.x + dx, self.y + dy)


class Point3(NamedTuple):
    """A point in the building, mm: x east, y north, z above finished floor level."""

    x: float
    y: float
    z: float


def distance3(a: Point3, b: Point3) -> float:
    """Return the straight distance of two points of the building in mm."""
    return math.dist(a, b)


@dataclass(frozen=True)
class Box:
    """An upright rectangle on a sheet, mm."""

    x0: float
    y0: float
    x1: float
    y1: float

    @property
    def width(self) -> float:
        """Width in mm."""
        return self.x1 - self.x0

    @property
    def height(self) -> float:
        """Height in mm."""
        return self.y1 - self.y0

    @property
    def centre(self) -> Point:
        """Middle of the box."""
        return Point((self.x0 + self.x1) / 2, (self.y0 + self.y1) / 2)

    def grown(self, by: float) -> Box:
        """Return the box grown by so many mm on all four sides."""
        return Box(self.x0 - by, self.y0 - by, self.x1 + by, self.y1 + by)

    def meets(self, other: Box) -> bool:
        """Tell whether two boxes share area."""
        return (
            self.x0 < other.x1 and other.x0 < self.x1 and self.y0 < other.y1 and other.y0 < self.y1
        )

    def holds(self, other: Box) -> bool:
        """Tell whether the other box lies wholly inside this one."""
        return (
            self.x0 <= other.x0
            and self.y0 <= other.y0
            and self.x1 >= other.x1
            and self.y1 >= other.y1
        )

    def joined(self, other: Box) -> Box:
        """Return the smallest box round both."""
        return Box(
            min(self.x0, other.x0),
            min(self.y0, other.y0),
            max(self.x1, other.x1),
            max(self.y1, other.y1),
        )
