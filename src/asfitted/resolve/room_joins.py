"""What the job says of how its rooms lie to each other: passages between them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.resolve.room_outlines import Frame, heading_that_turns, outline_of, with_heading

if TYPE_CHECKING:
    from asfitted.resolve.ledger import Ledger
    from asfitted.resolve.room_outlines import Outline
    from asfitted.resolve.wall_names import WallNames
    from asfitted.spec.load_yaml import SpecPath
    from asfitted.spec.rooms import RoomWords
    from asfitted.spec.words import PositionWords

#: Thickness of a wall that is passed through and was not recorded: common practice.
THROUGH_WALL_MM = 300.0


@dataclass(frozen=True)
class Side:
    """One end of a passage on plan: room, letter of the wall, mm along it."""

    room: str
    letter: str
    along_mm: float


@dataclass(frozen=True)
class Join:
    """A passage as far as it tells how two rooms lie: its two sides, and how far apart (mm)."""

    tag: str
    through: str  # "wall" or "floor"
    first: Side
    second: Side
    apart_mm: float  # thickness of the wall; 0 through a floor

    @property
    def path(self) -> SpecPath:
        """Where it stands in the spec."""
        return ("passages", self.tag)

    def other(self, room: str) -> Side:
        """Return the side that is not in a room."""
        return self.second if self.first.room == room else self.first

    def own(self, room: str) -> Side:
        """Return the side that is in a room."""
        return self.first if self.first.room == room else self.second

    def far_place(self, room: str, outline: Outline) -> Point:
        """Return where on plan the end in the other room is, seen from a room that is placed."""
        side = self.own(room)
        return outline.wall(side.letter).spot(side.along_mm, -self.apart_mm)


def _side(words: PositionWords, path: SpecPath, names: WallNames, ledger: Ledger) -> Side | None:
    if not words.wall:
        return None  # told where the passage is resolved
    found = names.find(words.room, words.wall, path, ledger)
    return Side(*found, words.along_mm) if found else None


def joins_of(ledger: Ledger, names: WallNames) -> list[Join]:
    """Return the joins of all passages whose walls are known, in the order of the file."""
    joins = []
    for tag, words in ledger.loaded.spec.passages.items():
        path: SpecPath = ("passages", tag)
        first = _side(words.start, (*path, "from"), names, ledger)
        second = _side(words.to, (*path, "to"), names, ledger)
        if first is None or second is None or first.room == second.room:
            continue
        apart = 0.0 if words.through == "floor" else words.thickness or THROUGH_WALL_MM
        joins.append(Join(tag, words.through, first, second, apart))
    return joins


def frame_by_join(
    join: Join, room: str, outline: Outline, words: RoomWords, norths: tuple[Point, Point] | None
) -> Frame:
    """Return the frame of the other room of a join.

    Args:
        join: The passage.
        room: The room that has its place.
        outline: Its outline there.
        words: The other room.
        norths: Directions of north in the placed room and in the other traced to the east; only a
            passage through a floor needs them. None: its two walls stand one above the other.
    """
    own, other = join.own(room), join.other(room)
    wall = outline.wall(own.letter)
    local = outline_of(words, Frame()).wall(other.letter)
    if join.through == "wall":
        back = Point(-wall.direction.x + 0.0, -wall.direction.y + 0.0)
        heading = heading_that_turns(local.direction, back)
    elif norths is not None:
        heading = heading_that_turns(norths[1], norths[0])
    else:
        heading = heading_that_turns(local.direction, wall.direction)
    spot = with_heading(local.spot(other.along_mm), heading)
    target = join.far_place(room, outline)
    return Frame(Point(target.x - spot.x, target.y - spot.y), heading)


def frame_on_plan(words: RoomWords, first: Frame) -> Frame:
    """Return the frame of a room whose place on plan is given, from that of the first room."""
    place = words.on_plan
    across, down = (place.right_mm, place.down_mm) if place else (0.0, 0.0)
    step = with_heading(Point(across, -down), first.heading)
    return Frame(first.origin.moved(step.x, step.y), first.heading)


def north_of(words: RoomWords, outline: Outline) -> Point | None:
    """Return the direction of north of a room in the frame of its outline, None if not given."""
    letter = (words.north or "").removeprefix("wall ").strip()
    for wall in outline.walls:
        if wall.letter == letter:
            return Point(-wall.inward.x + 0.0, -wall.inward.y + 0.0)
    return None
