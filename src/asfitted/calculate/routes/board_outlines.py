"""Outlines of boards and the cabinet on the walls: a cable is not clipped across them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.routes.wall_strip import spot_of
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.routes.cable_ends import CableEnd, Stretch
    from asfitted.resolve.installation import Board, Cabinet, Installation, Wall

_TOUCH_MM = 1.0
# Room left beside a board or cabinet that a clipped cable passes: common practice.
BESIDE_MM = 50.0


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

    def bars(self, along_mm: float, from_up_mm: float, to_up_mm: float) -> bool:
        """Tell whether an upright line that begins clear of the front runs through it."""
        low, high = sorted((from_up_mm, to_up_mm))
        left, right = self.along_mm
        foot, top = self.up_mm
        is_across = left + _TOUCH_MM < along_mm < right - _TOUCH_MM
        begins_in_it = foot <= from_up_mm <= top
        return is_across and not begins_in_it and low < top and high > foot


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


def beside_boards(
    installation: Installation, end: CableEnd, up_mm: float, *, rightwards: bool
) -> float:
    """Return where along its wall a cable goes up or down from an end to a level, mm.

    Straight at the end itself, unless a board or the cabinet stands in the way: then beside that,
    on the side towards which the cable goes on, or on the other where the wall is not wide enough.
    """
    if end.wall is None:
        return end.along_mm
    outlines = outlines_on_walls(installation).get(end.wall.name, ())
    sides = sides_of_boards(outlines, end, up_mm)
    return next(iter(sides if rightwards else reversed(sides)), end.along_mm)


def sides_of_boards(outlines: Sequence[Outline], end: CableEnd, up_mm: float) -> tuple[float, ...]:
    """Return where a cable passes beside boards that bar its way up or down: right, then left.

    None where nothing is in the way; only places on the wall, mm along it. A board or cabinet has
    its own cables at its top and foot.
    """
    in_the_way = [
        o for o in outlines if o.tag != end.tag and o.bars(end.along_mm, end.up_mm, up_mm)
    ]
    if end.wall is None or end.half_height_mm > 0 or not in_the_way:
        return ()
    left = min(outline.along_mm[0] for outline in in_the_way) - BESIDE_MM
    right = max(outline.along_mm[1] for outline in in_the_way) + BESIDE_MM
    return tuple(x for x in (right, left) if 0.0 <= x <= end.wall.length_mm)
