"""The outline of a room on plan: its walls clockwise, traced from a first corner and heading."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Point

if TYPE_CHECKING:
    from asfitted.spec.rooms import RoomWords

EAST = Point(1.0, 0.0)
FIRST_CORNER = Point(0.0, 0.0)


def turned_right(direction: Point) -> Point:
    """Return a direction after a turn to the right; + 0.0 makes a minus nought a nought."""
    return Point(direction.y + 0.0, -direction.x + 0.0)


def turned(direction: Point, turn: str) -> Point:
    """Return a direction after the turn at the end of a wall, "right" or "left"."""
    right = turned_right(direction)
    return right if turn == "right" else Point(-right.x + 0.0, -right.y + 0.0)


def with_heading(vector: Point, heading: Point) -> Point:
    """Return a vector of a room traced to the east, for the room traced along a heading."""
    return Point(
        vector.x * heading.x - vector.y * heading.y + 0.0,
        vector.x * heading.y + vector.y * heading.x + 0.0,
    )


def heading_that_turns(own: Point, wanted: Point) -> Point:
    """Return the heading with which a direction of a room traced to the east becomes another."""
    return with_heading(wanted, Point(own.x, -own.y))


@dataclass(frozen=True)
class Frame:
    """Where the first wall of a room starts on plan (mm) and which way it runs."""

    origin: Point = FIRST_CORNER
    heading: Point = EAST

    def moved(self, east_mm: float) -> Frame:
        """Return the frame so far to the east."""
        return Frame(self.origin.moved(east_mm), self.heading)


@dataclass(frozen=True)
class OutlineWall:
    """One wall of an outline: its left end as seen from inside, and its direction."""

    letter: str
    start: Point
    direction: Point
    length_mm: float

    @property
    def inward(self) -> Point:
        """Direction into the room."""
        return turned_right(self.direction)

    def spot(self, along_mm: float, out_mm: float = 0.0) -> Point:
        """Return the place so far along the wall and so far into the room."""
        return Point(
            self.start.x + self.direction.x * along_mm + self.inward.x * out_mm,
            self.start.y + self.direction.y * along_mm + self.inward.y * out_mm,
        )


@dataclass(frozen=True)
class Outline:
    """The walls of a room in a frame, and where the tracing ended."""

    walls: tuple[OutlineWall, ...]
    end: Point
    end_heading: Point

    @property
    def west_mm(self) -> float:
        """The least x of a corner."""
        return min((wall.start.x for wall in self.walls), default=self.end.x)

    @property
    def east_mm(self) -> float:
        """The greatest x of a corner."""
        return max((wall.start.x for wall in self.walls), default=self.end.x)

    def wall(self, letter: str) -> OutlineWall:
        """Return the wall with a letter.

        Raises:
            KeyError: the room has no such wall.
        """
        for wall in self.walls:
            if wall.letter == letter:
                return wall
        raise KeyError(letter)


def outline_of(words: RoomWords, frame: Frame) -> Outline:
    """Trace the walls of a room."""
    start, direction = frame.origin, frame.heading
    walls = []
    for letter, wall in words.walls.items():
        walls.append(OutlineWall(letter, start, direction, wall.length))
        start = start.moved(direction.x * wall.length, direction.y * wall.length)
        direction = turned(direction, wall.turn)
    return Outline(tuple(walls), start, direction)
