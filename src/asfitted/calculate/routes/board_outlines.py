"""Outlines of boards and the cabinet on the walls: a cable is not clipped across them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.routes.wall_strip import spot_of
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.calculate.routes.cable_ends import Stretch
    from asfitted.resolve.installation import Board, Cabinet, Installation, Wall

_TOUCH_MM = 1.0


@dataclass(frozen=True)
class Outline:
    """The front of a board or cabinet on the inner face of its wall, mm along and up."""

    tag: str
    wall: Wall
    along_mm: tuple[float, float]
    up_mm: tuple[float, float]

    def is_met_by(self, stretch: Stretch) -> bool:
        """Tell whether a straight piece on the same wall lies over the front or along its edge."""
        ends = (spot_of(self.wall, stretch.start)[0], spot_of(self.wall, stretch.end)[0])
        ups = (stretch.start.z, stretch.end.z)
        left, right = self.along_mm
        beside = min(ends) >= right - _TOUCH_MM or max(ends) <= left + _TOUCH_MM
        apart = min(ups) > self.up_mm[1] + _TOUCH_MM or max(ups) < self.up_mm[0] - _TOUCH_MM
        return not (beside or apart)


def outlines_on_walls(installation: Installation) -> dict[str, tuple[Outline, ...]]:
    """Return the outlines of all boards and of the cabinet that stay, by wall."""
    things: list[Board | Cabinet] = [
        board for board in installation.boards.values() if board.state is not State.REMOVED
    ]
    if installation.cabinet is not None:
        things.append(installation.cabinet)
    found: dict[str, tuple[Outline, ...]] = {}
    for thing in things:
        at = thing.position
        wall = installation.walls.get(at.wall)
        if wall is None or at.outside:
            continue
        outline = Outline(
            thing.tag,
            wall,
            (at.along_mm - thing.width_mm / 2, at.along_mm + thing.width_mm / 2),
            (at.up_mm - thing.height_mm / 2, at.up_mm + thing.height_mm / 2),
        )
        found[wall.name] = (*found.get(wall.name, ()), outline)
    return found
