"""One wall at a scale on a sheet: building coordinates to wall coordinates to the sheet."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from asfitted.geometry import Box, Point
from asfitted.layout.elevation.window import whole_window

if TYPE_CHECKING:
    from asfitted.geometry import Point3
    from asfitted.layout.elevation.window import Window
    from asfitted.resolve.installation import Wall

ON_FACE_MM = 60.0  # further out than this a thing is not on the wall
OUTSIDE_MM = -1.0  # further in than this it is behind the inner face


class WallPoint(NamedTuple):
    """A place on a wall seen from inside, mm: from its left end, above the floor, into the room."""

    along: float
    up: float
    out: float


def on_wall(wall: Wall, place: Point3) -> WallPoint:
    """Return a place of the building in the coordinates of a wall."""
    dx, dy = place.x - wall.start.x, place.y - wall.start.y
    along = dx * wall.direction.x + dy * wall.direction.y
    out = dx * wall.inward.x + dy * wall.inward.y
    return WallPoint(round(along, 3), round(place.z, 3), round(out, 3))


@dataclass(frozen=True)
class WallView:
    """A wall, or a window on it, on the sheet.

    ``left`` is x of the left side of what is shown, ``floor`` y of the floor line (below the view
    where a detail does not reach the floor).
    """

    wall: Wall
    scale: int
    left: float
    floor: float
    window: Window | None = None

    @property
    def shown(self) -> Window:
        """What of the wall is shown."""
        return self.window or whole_window(self.wall)

    def mm(self, length_mm: float) -> float:
        """Return a length of the building on paper."""
        return length_mm / self.scale

    def x(self, along_mm: float) -> float:
        """Return x on the sheet of a distance along the wall."""
        return self.left + (along_mm - self.shown.from_mm) / self.scale

    def y(self, up_mm: float) -> float:
        """Return y on the sheet of a height above the floor."""
        return self.floor - up_mm / self.scale

    def at(self, along_mm: float, up_mm: float) -> Point:
        """Return a place of the wall on the sheet."""
        return Point(self.x(along_mm), self.y(up_mm))

    def centred(self, along_mm: float, up_mm: float, width_mm: float, height_mm: float) -> Box:
        """Return the box on the sheet of a thing given by its centre and true size."""
        centre = self.at(along_mm, up_mm)
        half_x, half_y = self.mm(width_mm) / 2, self.mm(height_mm) / 2
        return Box(centre.x - half_x, centre.y - half_y, centre.x + half_x, centre.y + half_y)

    @property
    def right(self) -> float:
        """Return x of the right side."""
        return self.x(self.shown.to_mm)

    @property
    def ceiling(self) -> float:
        """Return y of the top of what is shown."""
        return self.y(self.shown.high_mm)

    @property
    def foot(self) -> float:
        """Return y of the lower side of what is shown: the floor line but for a detail."""
        return self.y(self.shown.low_mm)

    @property
    def box(self) -> Box:
        """Return the outline of what is shown on the sheet."""
        return Box(self.left, self.ceiling, self.right, self.foot)


def height_words(up_mm: float) -> str:
    """Return a height as printed: "+2900", "±0"."""
    whole = round(up_mm)
    return "±0" if whole == 0 else f"{whole:+d}".replace("-", "−")
