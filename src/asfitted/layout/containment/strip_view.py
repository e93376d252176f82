"""A part of a strip on the sheet: distances along the run and heights to mm of paper."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Point

if TYPE_CHECKING:
    from asfitted.layout.containment.developed_run import DevelopedRun, Stretch
    from asfitted.layout.containment.strip_parts import StripPart, StripScale

LEAST_MM = 1.25  # thin containment is drawn this thick


@dataclass(frozen=True)
class StripView:
    """Where a part of a strip lies: ``left`` is x of its first cut, ``floor`` y of floor level."""

    developed: DevelopedRun
    part: StripPart
    scale: StripScale
    left: float
    floor: float

    def x(self, over: float) -> float:
        """Return x of a place so far sideways along the run."""
        return self.left + (over - self.part.over[0]) / self.scale.along

    def y(self, up: float) -> float:
        """Return y of a height."""
        return self.floor - up / self.scale.up

    @property
    def right(self) -> float:
        """Where the part ends, x."""
        return self.x(self.part.over[1])

    def held(self, over: float) -> float:
        """Return a place along the run, moved to the nearer cut where it lies beyond the part."""
        return min(max(over, self.part.over[0]), self.part.over[1])

    def at(self, along: float) -> Point:
        """Return the place on the sheet of the line of the run so far along it."""
        over, up = self.developed.place(along)
        return Point(self.x(over), self.y(up))

    def edges(self, up: float) -> tuple[float, float]:
        """Return y of the upper and lower edge of the run where it is level at a height."""
        run = self.developed.run
        thick = max(run.height_mm / self.scale.up, LEAST_MM)
        above = {"T/O": 0.0, "U/S": 1.0, "C/L": 0.5}[run.level_of] * thick
        return self.y(up) - above, self.y(up) - above + thick

    def shown(self, stretch: Stretch) -> bool:
        """Tell whether any of a stretch lies on this part."""
        a, b = stretch.over
        if stretch.is_upright:
            return self.part.holds(a)
        return b > self.part.over[0] + 1e-6 and a < self.part.over[1] - 1e-6

    def outline(self, stretch: Stretch) -> tuple[Point, ...]:
        """Return the corners of a stretch: edge-on where level, its width where upright."""
        if stretch.is_upright:
            half = max(self.developed.run.width_mm / self.scale.along, LEAST_MM) / 2
            x = self.x(stretch.over[0])
            y0, y1 = sorted(self.y(up) for up in stretch.up)
            return (
                Point(x - half, y0),
                Point(x + half, y0),
                Point(x + half, y1),
                Point(x - half, y1),
            )
        a, b = (self.held(over) for over in stretch.over)
        tops = [self.edges(self._up_at(stretch, over)) for over in (a, b)]
        return (
            Point(self.x(a), tops[0][0]),
            Point(self.x(b), tops[1][0]),
            Point(self.x(b), tops[1][1]),
            Point(self.x(a), tops[0][1]),
        )

    @staticmethod
    def _up_at(stretch: Stretch, over: float) -> float:
        share = (over - stretch.over[0]) / (stretch.over[1] - stretch.over[0])
        return stretch.up[0] + (stretch.up[1] - stretch.up[0]) * share
