"""How the rooms of a job lie to each other, on each storey and one storey above the other.

A passage through a wall sets two rooms back to back, apart by the thickness of the wall; a passage
through a floor sets one room over the other; ``on plan`` gives a place outright. Rooms that nothing
joins stand side by side, and storeys stand side by side in the frame of the drawings.
"""

from __future__ import annotations

import math
from collections import deque
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from asfitted.resolve.room_joins import frame_by_join, frame_on_plan, joins_of, north_of
from asfitted.resolve.room_outlines import Frame, outline_of
from asfitted.resolve.storeys import storeys_of
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from asfitted.geometry import Point
    from asfitted.resolve.ledger import Ledger
    from asfitted.resolve.room_joins import Join
    from asfitted.resolve.room_outlines import Outline
    from asfitted.resolve.storeys import Storey
    from asfitted.resolve.wall_names import WallNames
    from asfitted.spec.rooms import RoomWords

ROOM_GAP_MM = 3000.0  # rooms whose relation is not in the spec stand side by side on plan
STOREY_GAP_MM = 20_000.0  # between the plans of two storeys in the frame of the drawings
# Two passages between two rooms may disagree by so much: common practice for a measured survey.
JOIN_TOLERANCE_MM = 100.0


@dataclass(frozen=True)
class RoomPlace:
    """Where a room is: its frame in the drawings, its storey, and north if any room tells it."""

    frame: Frame
    storey: Storey
    storey_east_mm: float
    is_placed: bool
    north: Point | None


@dataclass
class _Placing:
    """Frames of rooms in the building while they are worked out; groups are joined rooms."""

    rooms: Mapping[str, RoomWords]
    joins: list[Join]
    ledger: Ledger
    frames: dict[str, Frame] = field(default_factory=dict)
    groups: list[list[str]] = field(default_factory=list)

    def outline(self, room: str) -> Outline:
        return outline_of(self.rooms[room], self.frames.get(room, Frame()))

    def place_all(self) -> None:
        """Place every room, the first of each group at the origin."""
        for room in self.rooms:
            if room not in self.frames:
                self.frames[room] = Frame()
                self.groups.append([room])
                self._spread(room)

    def _spread(self, room: str) -> None:
        waiting = deque([room])
        while waiting:
            here = waiting.popleft()
            for other, frame in self._beside(here):
                if other not in self.frames:
                    self.frames[other] = frame
                    self.groups[-1].append(other)
                    waiting.append(other)

    def _beside(self, here: str) -> Iterator[tuple[str, Frame]]:
        """Yield the rooms that something joins to a placed room, with their frames."""
        if here == next(iter(self.rooms)):
            for name, words in self.rooms.items():
                if words.on_plan is not None:
                    yield name, frame_on_plan(words, self.frames[here])
        for join in self.joins:
            if here in (join.first.room, join.second.room):
                other = join.other(here).room
                norths = self._norths(here, other)
                yield (
                    other,
                    frame_by_join(join, here, self.outline(here), self.rooms[other], norths),
                )

    def _norths(self, here: str, other: str) -> tuple[Point, Point] | None:
        own = north_of(self.rooms[here], self.outline(here))
        its = north_of(self.rooms[other], outline_of(self.rooms[other], Frame()))
        return (own, its) if own is not None and its is not None else None

    def check_joins(self) -> None:
        """Note passages that do not fit the places that others gave."""
        for join in self.joins:
            first, second = join.first, join.second
            far = join.far_place(first.room, self.outline(first.room))
            wall = self.outline(second.room).wall(second.letter)
            apart = math.dist(far, wall.spot(second.along_mm))
            back = self.outline(first.room).wall(first.letter).direction
            turned = (wall.direction.x + back.x, wall.direction.y + back.y) != (0.0, 0.0)
            if join.through == "wall" and turned:
                message = (
                    f"passage {join.tag}: {first.room} wall {first.letter} and {second.room} wall "
                    f"{second.letter} do not stand back to back as the other passages place them"
                )
                self.ledger.problem(Code.WALLS, message, join.path, "check the letters of walls")
            elif apart > JOIN_TOLERANCE_MM:
                message = (
                    f"passage {join.tag}: its two ends lie {apart:.0f} mm apart on plan as "
                    f"{second.room} is placed by what stands before it"
                )
                hint = "measure both again, from the left end of the wall as seen from inside"
                self.ledger.problem(Code.WALLS, message, join.path, hint)

    def north(self, group: list[str]) -> Point | None:
        """Return north of joined rooms; rooms that contradict each other are noted."""
        found: tuple[str, Point] | None = None
        for room in group:
            own = north_of(self.rooms[room], self.outline(room))
            if own is None:
                continue
            found = found or (room, own)
            if own != found[1]:
                message = (
                    f"north of {room} is not that of {found[0]}, as the rooms lie to each other"
                )
                hint = "check which wall is to the north, and the passages between the rooms"
                self.ledger.problem(Code.WALLS, message, ("rooms", room, "north"), hint)
        return found[1] if found else None


def room_places(ledger: Ledger, names: WallNames) -> dict[str, RoomPlace]:
    """Return where every room is; contradictions are noted in the ledger."""
    rooms = ledger.loaded.spec.rooms
    storeys = storeys_of(ledger)
    placing = _Placing(rooms, joins_of(ledger, names), ledger)
    placing.place_all()
    placing.check_joins()
    norths = {room: north for g in placing.groups for north in [placing.north(g)] for room in g}
    apart = _side_by_side(placing, storeys, ledger)
    east = _storeys_apart(placing, storeys, apart)
    joined = {room for group in placing.groups for room in group if len(group) > 1}
    return {
        room: RoomPlace(
            frame=placing.frames[room].moved(apart[room] + east[storeys[room].name]),
            storey=storeys[room],
            storey_east_mm=east[storeys[room].name],
            is_placed=room in joined or room == next(iter(rooms)),
            north=norths[room],
        )
        for room in rooms
    }


def _side_by_side(
    placing: _Placing, storeys: Mapping[str, Storey], ledger: Ledger
) -> dict[str, float]:
    """Return how far east each group goes so that none covers another on any storey."""
    taken: dict[str, float] = {}  # east end of what stands on a storey already
    apart: dict[str, float] = {}
    for group in placing.groups:
        gaps = [
            taken[storeys[room].name] + ROOM_GAP_MM - placing.outline(room).west_mm
            for room in group
            if storeys[room].name in taken
        ]
        east = max(gaps, default=0.0)
        if gaps:
            reason = "not said how the rooms lie to each other; drawn side by side"
            ledger.default(group[0], "place on plan", f"{east:g} mm east", reason)
        for room in group:
            apart[room] = east
            end = placing.outline(room).east_mm + east
            name = storeys[room].name
            taken[name] = max(taken.get(name, end), end)
    return apart


def _storeys_apart(
    placing: _Placing, storeys: Mapping[str, Storey], apart: Mapping[str, float]
) -> dict[str, float]:
    """Return how far east each storey stands in the frame of the drawings, the lowest at nought."""
    levels: dict[str, float] = {}
    for storey in storeys.values():
        levels[storey.name] = min(levels.get(storey.name, storey.level_mm), storey.level_mm)
    east: dict[str, float] = {}
    end: float | None = None
    for name in sorted(levels, key=lambda one: levels[one]):
        on_it = [room for room in storeys if storeys[room].name == name]
        west = min(placing.outline(room).west_mm + apart[room] for room in on_it)
        width = max(placing.outline(room).east_mm + apart[room] for room in on_it) - west
        east[name] = 0.0 if end is None else math.ceil((end + STOREY_GAP_MM - west) / 1000) * 1000.0
        end = west + east[name] + width
    return east
