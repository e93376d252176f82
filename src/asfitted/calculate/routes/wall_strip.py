"""Walls side by side, and the square ways along them that cross no door or window.

Walls are unfolded in clockwise order, left to right as seen from inside: x counts along the strip
from the left end of its first wall, z up from finished floor level, both in mm.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from asfitted.geometry import Point3

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from asfitted.resolve.installation import Opening, Room, Wall

# A cable may run along the very edge of an opening drawn to the millimetre.
_TOUCH_MM = 1.0
# Room for the frame of a door or window beside which a cable is taken: common practice.
FRAME_CLEARANCE_MM = 100.0


class Flat(NamedTuple):
    """A place on a strip, mm."""

    x: float
    z: float


class WallPiece(NamedTuple):
    """One straight line on one wall: along and up of both ends, mm."""

    wall: Wall
    along0: float
    up0: float
    along1: float
    up1: float

    @property
    def is_vertical(self) -> bool:
        """Whether the line goes up or down."""
        return self.along0 == self.along1


def place_on(wall: Wall, along_mm: float, up_mm: float, out_mm: float = 0.0) -> Point3:
    """Return the place in the building of a spot on a wall, ``out_mm`` into the room."""
    return Point3(
        wall.start.x + wall.direction.x * along_mm + wall.inward.x * out_mm,
        wall.start.y + wall.direction.y * along_mm + wall.inward.y * out_mm,
        up_mm,
    )


def spot_of(wall: Wall, place: Point3) -> tuple[float, float]:
    """Return how far along a wall a place is, and how far into the room (mm)."""
    dx, dy = place.x - wall.start.x, place.y - wall.start.y
    return (
        dx * wall.direction.x + dy * wall.direction.y,
        dx * wall.inward.x + dy * wall.inward.y,
    )


@dataclass(frozen=True)
class Strip:
    """Neighbouring walls in clockwise order, unfolded."""

    walls: tuple[Wall, ...]

    def left_of(self, index: int) -> float:
        """Return x of the left end of a wall of the strip."""
        return sum(wall.length_mm for wall in self.walls[:index])

    def crossed(self, a: Flat, b: Flat) -> tuple[Wall, Opening] | None:
        """Return the first opening that a straight line passes through, if any."""
        x0, x1 = sorted((a.x, b.x))
        z0, z1 = sorted((a.z, b.z))
        for index, wall in enumerate(self.walls):
            left = self.left_of(index)
            for opening in wall.openings:
                begin = left + opening.from_mm
                beside = x1 <= begin + _TOUCH_MM or x0 >= begin + opening.width_mm - _TOUCH_MM
                top = opening.sill_mm + opening.height_mm
                apart = z1 <= opening.sill_mm + _TOUCH_MM or z0 >= top - _TOUCH_MM
                if not (beside or apart):
                    return wall, opening
        return None

    def is_clear(self, path: Sequence[Flat]) -> bool:
        """Tell whether a way of straight lines passes through no opening."""
        return all(self.crossed(a, b) is None for a, b in itertools.pairwise(path))

    def pieces(self, path: Sequence[Flat]) -> Iterator[WallPiece]:
        """Cut a way at the corners of the room; lines of no length are left out."""
        for a, b in itertools.pairwise(path):
            if a == b:
                continue
            if a.x == b.x:
                index = self._wall_at(a.x)
                along = a.x - self.left_of(index)
                yield WallPiece(self.walls[index], along, a.z, along, b.z)
            else:
                yield from self._level_pieces(a, b)

    def _wall_at(self, x: float) -> int:
        for index in range(len(self.walls) - 1):
            if x <= self.left_of(index + 1):
                return index
        return len(self.walls) - 1

    def _level_pieces(self, a: Flat, b: Flat) -> Iterator[WallPiece]:
        low, high = min(a.x, b.x), max(a.x, b.x)
        found = []
        for index, wall in enumerate(self.walls):
            left = self.left_of(index)
            begin, end = max(low, left), min(high, left + wall.length_mm)
            if end > begin:
                found.append(WallPiece(wall, begin - left, a.z, end - left, a.z))
        if a.x <= b.x:
            yield from found
        else:
            for piece in reversed(found):
                yield WallPiece(piece.wall, piece.along1, piece.up1, piece.along0, piece.up0)

    def _detours(self, a: Flat, b: Flat) -> Iterator[list[Flat]]:
        """Yield ways round the openings: beside them, then over or under them."""
        width = sum(wall.length_mm for wall in self.walls)
        for index, wall in enumerate(self.walls):
            for opening in wall.openings:
                for along in beside_opening(opening):
                    x = self.left_of(index) + along
                    if 0 <= x <= width:
                        yield [a, Flat(x, a.z), Flat(x, b.z), b]
                top = opening.sill_mm + opening.height_mm + FRAME_CLEARANCE_MM
                for z in (top, opening.sill_mm - FRAME_CLEARANCE_MM):
                    if 0 <= z <= wall.height_mm:
                        yield [a, Flat(a.x, z), Flat(b.x, z), b]

    def square_path(self, a: Flat, b: Flat) -> list[Flat] | None:
        """Return the shortest way by upright and level lines that crosses no opening.

        The upright line at ``a`` comes first where that is as short. None: every way is blocked.
        """
        tries = [[a, Flat(a.x, b.z), b], [a, Flat(b.x, a.z), b]]
        clear = [path for path in tries if self.is_clear(path)]
        if clear:
            return clear[0]
        clear = [path for path in self._detours(a, b) if self.is_clear(path)]
        return min(clear, key=flat_length, default=None)


def beside_opening(opening: Opening) -> tuple[float, float]:
    """Return how far along its wall a cable passes clear of an opening, left and right, mm."""
    return (
        opening.from_mm - FRAME_CLEARANCE_MM,
        opening.from_mm + opening.width_mm + FRAME_CLEARANCE_MM,
    )


def beside_openings(wall: Wall) -> list[float]:
    """Return the places on a wall just clear of its openings, mm along."""
    places = (along for opening in wall.openings for along in beside_opening(opening))
    return [along for along in places if 0 <= along <= wall.length_mm]


def flat_length(path: Sequence[Flat]) -> float:
    """Return the length of a way of upright and level lines, mm."""
    return sum(abs(b.x - a.x) + abs(b.z - a.z) for a, b in itertools.pairwise(path))


def neighbours(first: Wall, second: Wall) -> Strip | None:
    """Return the strip of a wall alone, or of two walls that share a corner; else None."""
    if first.name == second.name:
        return Strip((first,))
    if first.next_wall == second.name:
        return Strip((first, second))
    if second.next_wall == first.name:
        return Strip((second, first))
    return None


def ways_round(
    room: Room, walls: Mapping[str, Wall], first: Wall, second: Wall
) -> tuple[tuple[Strip, bool], ...]:
    """Return the strips that lead from one wall to another of a room, both ways round.

    The flag tells whether the first wall is at the left end of the strip. Where both are one
    wall, that wall alone comes first.
    """
    names = room.walls
    i, j = names.index(first.name), names.index(second.name)

    def turn(begin: int, end: int) -> Strip:
        count = (end - begin) % len(names) or len(names)
        return Strip(tuple(walls[names[(begin + k) % len(names)]] for k in range(count + 1)))

    round_ways = ((turn(i, j), True), (turn(j, i), False))
    return ((Strip((first,)), True), *round_ways) if i == j else round_ways
