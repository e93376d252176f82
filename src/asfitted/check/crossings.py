"""Where a run crosses another run, or cables, on the inner face of one wall."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.containment.support_spacing import LAID_IN

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from asfitted.calculate.results import CableRoute
    from asfitted.geometry import Point3
    from asfitted.resolve.installation import Containment, Installation, Wall

CLEAR_MM = 1.0  # lines that only meet at an end do not cross


@dataclass(frozen=True)
class Line:
    """A straight piece on a wall: of a run, or of a cable where ``run`` is None."""

    tag: str
    run: Containment | None
    along: tuple[float, float]  # mm along the wall, least first
    up: tuple[float, float]  # mm above the floor, least first

    @property
    def is_level(self) -> bool:
        """Whether it lies level."""
        return self.up[1] - self.up[0] < CLEAR_MM

    def crosses(self, other: Line) -> bool:
        """Tell whether a level and an upright line cross away from their ends."""
        if self.is_level == other.is_level:
            return False
        level, upright = (self, other) if self.is_level else (other, self)
        return (
            level.along[0] + CLEAR_MM < upright.along[0] < level.along[1] - CLEAR_MM
            and upright.up[0] + CLEAR_MM < level.up[0] < upright.up[1] - CLEAR_MM
        )

    @property
    def depth_mm(self) -> float:
        """How far it comes off its own back: tray, basket and ladder lie flat where level."""
        if self.run is None:
            return 0.0
        flat = self.run.kind in LAID_IN and self.is_level
        return self.run.width_mm if flat else self.run.height_mm


@dataclass(frozen=True)
class Crossing:
    """A line of a run that crosses another line, a later run or a cable."""

    wall: str
    run: Line
    other: Line

    @property
    def is_told(self) -> bool:
        """Whether the stand-offs say which of the two passes in front, and clear of the other.

        A cable passes behind a run that stands off the wall at all: how thick a fixing holds it
        there is not known.
        """
        one = self.run.run
        other = self.other.run
        if one is None or other is None:
            return one is not None and bool(one.stand_off_mm)
        first, second = one.stand_off_mm or 0.0, other.stand_off_mm or 0.0
        return first >= second + self.other.depth_mm or second >= first + self.run.depth_mm


def crossings(installation: Installation, routes: Mapping[str, CableRoute]) -> Iterator[Crossing]:
    """Yield every crossing on a wall, run with run once, wall by wall."""
    runs = _lines_of_runs(installation)
    cables = _lines_of_cables(installation, routes)
    for wall, lines in runs.items():
        for number, line in enumerate(lines):
            others = (*lines[:number], *cables.get(wall, ()))
            yield from (Crossing(wall, line, one) for one in others if line.crosses(one))


def _lines_of_runs(installation: Installation) -> dict[str, list[Line]]:
    found: dict[str, list[Line]] = defaultdict(list)
    for run in installation.containment.values():
        if run.state == "removed" or run.declared_length_m is not None:
            continue
        for name, start, end in zip(run.walls, run.path, run.path[1:], strict=False):
            wall = installation.walls.get(name)
            if wall is not None:
                found[name].append(_line(run.tag, run, wall, (start, end)))
    return found


def _lines_of_cables(
    installation: Installation, routes: Mapping[str, CableRoute]
) -> dict[str, list[Line]]:
    found: dict[str, list[Line]] = defaultdict(list)
    for tag, route in routes.items():
        if installation.cables[tag].state == "removed":
            continue
        for leg in route.legs:
            wall = installation.walls.get(leg.wall)
            if wall is None or leg.kind not in {"drop", "clipped"} or _is_outside(wall, leg.start):
                continue
            found[leg.wall].append(_line(tag, None, wall, (leg.start, leg.end)))
    return found


def _is_outside(wall: Wall, place: Point3) -> bool:
    off = (place.x - wall.start.x) * wall.inward.x + (place.y - wall.start.y) * wall.inward.y
    return off < -CLEAR_MM


def _line(tag: str, run: Containment | None, wall: Wall, ends: Sequence[Point3]) -> Line:
    along = sorted(
        (place.x - wall.start.x) * wall.direction.x + (place.y - wall.start.y) * wall.direction.y
        for place in ends
    )
    up = sorted(place.z for place in ends)
    return Line(tag, run, (along[0], along[1]), (up[0], up[1]))
