"""Passages through walls and floors: both ends placed, the length between them, and what is known.

A wall passage is as long as the wall is thick. A floor passage is as long as its upper end lies
above its lower one, counted from the floor levels of the two rooms.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, cast

from asfitted.resolve.installation import Passage, State
from asfitted.resolve.room_joins import THROUGH_WALL_MM
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.resolve.installation import Position, Room
    from asfitted.resolve.positions import Positions
    from asfitted.spec.load_yaml import SpecPath
    from asfitted.spec.passages import PassageWords
    from asfitted.spec.words import PositionWords

NOT_RECORDED = "not recorded"
BANDS: tuple[Literal["power", "data"], ...] = ("power", "data")
# Heights of the two ends of a hole through a wall may differ so much: common practice.
LEVEL_TOLERANCE_MM = 50.0


class _Ends:
    """The two ends of one passage, and the rooms they are in."""

    def __init__(
        self, tag: str, words: PassageWords, positions: Positions, rooms: Mapping[str, Room]
    ) -> None:
        self.tag = tag
        self.words = words
        self.positions = positions
        self.ledger = positions.ledger
        self.rooms = rooms
        self.path: SpecPath = ("passages", tag)

    def end(self, words: PositionWords, key: str) -> Position | None:
        """Return one end; an end that is not on the inner face of a wall is noted."""
        path = (*self.path, key)
        if words.end_of or words.outside or words.out_mm:
            message = f"passage {self.tag}: an end is on the inner face of a wall of a room"
            hint = 'write it like "Hall wall C, 2.0 m along, 2.7 m up"'
            self.ledger.problem(Code.POSITION, message, path, hint)
            return None
        return self.positions.resolve(words, path, f"passage {self.tag}")

    def room(self, position: Position) -> Room:
        """Return the room of an end."""
        return self.rooms[self.positions.walls[position.wall].room]

    def length_mm(self, start: Position, end: Position) -> float | None:
        """Return what a cable needs from end to end, None when the ends do not fit."""
        first, second = self.room(start), self.room(end)
        if first.name == second.name:
            message = f"passage {self.tag} starts and ends in {first.name}"
            self.ledger.problem(Code.RUN, message, self.path, "it leads from one room to another")
            return None
        above_mm = (second.level_mm + end.up_mm) - (first.level_mm + start.up_mm)
        if self.words.through == "floor":
            return self._floor_mm(abs(above_mm), first, second)
        if abs(above_mm) > LEVEL_TOLERANCE_MM:
            message = (
                f"passage {self.tag}: its end in {second.name} lies {above_mm:+.0f} mm from the "
                f"height of its end in {first.name}, with their floors at "
                f"{first.level_mm:g} and {second.level_mm:g} mm"
            )
            hint = 'a hole through a wall is level; check "up" and the "level" of the rooms'
            self.ledger.problem(Code.POSITION, message, self.path, hint)
            return None
        return self._wall_mm()

    def _wall_mm(self) -> float:
        if self.words.thickness is not None:
            return self.words.thickness
        reason = "thickness of the wall not recorded (common practice); measure it on site"
        self.ledger.default(self.tag, "thickness", f"{THROUGH_WALL_MM:g} mm", reason)
        return THROUGH_WALL_MM

    def _floor_mm(self, above_mm: float, first: Room, second: Room) -> float | None:
        if first.level_mm == second.level_mm:
            message = (
                f"passage {self.tag} goes through a floor, but {first.name} and {second.name} "
                f"are both at {first.level_mm:g} mm"
            )
            hint = "give the upper room its level: 3.2 m above the ground floor"
            self.ledger.problem(Code.POSITION, message, self.path, hint)
            return None
        thickness = self.words.thickness or 0.0
        if above_mm < max(thickness, 1.0):
            message = (
                f"passage {self.tag}: its ends lie {above_mm:.0f} mm one above the other, "
                f"less than the floor is thick"
            )
            hint = 'check "up" of both ends and the "level" of the rooms'
            self.ledger.problem(Code.POSITION, message, self.path, hint)
            return None
        return above_mm

    def recorded(self, value: object, what: str) -> None:
        """Note a fact that nobody recorded."""
        if value is None:
            self.ledger.default(self.tag, what, NOT_RECORDED, "none was given")


def _passage_of(
    tag: str, words: PassageWords, positions: Positions, rooms: Mapping[str, Room]
) -> Passage | None:
    ends = _Ends(tag, words, positions, rooms)
    start, end = ends.end(words.start, "from"), ends.end(words.to, "to")
    length_mm = ends.length_mm(start, end) if start and end else None
    ends.recorded(words.size, "size")
    ends.recorded(words.fire_resistance, "fire resistance of what is passed")
    if words.fire_resistance != 0:
        ends.recorded(words.fire_stopping, "fire-stopping")
    if start is None or end is None or length_mm is None:
        return None
    stopping = cast("Literal['yes', 'no', 'not recorded']", words.fire_stopping or NOT_RECORDED)
    return Passage(
        tag=tag,
        through=cast("Literal['wall', 'floor']", words.through),
        start=start,
        end=end,
        length_mm=length_mm,
        thickness_mm=words.thickness,
        width_mm=words.size[0] if words.size else None,
        height_mm=words.size[1] if words.size else None,
        bands=tuple(band for band in BANDS if words.bands is None or band in words.bands),
        state=State(words.state or "new"),
        fire_resistance_min=words.fire_resistance,
        fire_stopping=stopping,
    )


def passages_of(positions: Positions, rooms: Mapping[str, Room]) -> dict[str, Passage]:
    """Return every passage by tag; what does not fit is noted in the ledger."""
    found: dict[str, Passage] = {}
    for tag, words in positions.ledger.loaded.spec.passages.items():
        positions.ledger.claim(tag, ("passages", tag))
        if passage := _passage_of(tag, words, positions, rooms):
            found[tag] = passage
    return found
