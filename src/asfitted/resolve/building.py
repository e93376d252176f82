"""Rooms and walls on plan.

Walls go clockwise on plan as seen from above. The first wall of the first room starts at the origin
and runs along +x with the room on its right; each next wall starts where the last one ends, turned
to the right (an inner corner) or, where the spec says so, to the left (an outer corner). Further
rooms lie where ``room_places`` puts them.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.resolve.installation import Opening, Room, Wall
from asfitted.resolve.room_outlines import EAST, outline_of
from asfitted.resolve.room_places import room_places
from asfitted.resolve.wall_names import WallNames
from asfitted.spec.problem_codes import Code
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from asfitted.resolve.ledger import Ledger
    from asfitted.resolve.room_outlines import Frame, Outline
    from asfitted.resolve.room_places import RoomPlace
    from asfitted.spec.load_yaml import SpecPath
    from asfitted.spec.rooms import RoomWords, WallWords

CLOSING_TOLERANCE_MM = 10.0
NOT_GIVEN = "not recorded"


def _openings(
    words: WallWords, path: SpecPath, height_mm: float, ledger: Ledger
) -> tuple[Opening, ...]:
    built = []
    for number, opening in enumerate(words.openings):
        where = (*path, "openings", number)
        if opening.start + opening.width > words.length:
            message = (
                f"the {opening.kind} ends {opening.start + opening.width:g} mm along, "
                f"but the wall is {words.length:g} mm long"
            )
            ledger.problem(Code.POSITION, message, (*where, "from"))
        if opening.sill + opening.height > height_mm:
            message = (
                f"the {opening.kind} reaches {opening.sill + opening.height:g} mm up, "
                f"but the wall is {height_mm:g} mm high"
            )
            ledger.problem(Code.POSITION, message, (*where, "height"))
        built.append(
            Opening(
                kind=opening.kind,  # type: ignore[arg-type] # the spec admits only these words
                name=opening.name or opening.kind,
                from_mm=opening.start,
                width_mm=opening.width,
                sill_mm=opening.sill,
                height_mm=opening.height,
            )
        )
    return tuple(sorted(built, key=lambda o: o.from_mm))


def _check_closed(name: str, outline: Outline, frame: Frame, ledger: Ledger) -> None:
    gap = Point(outline.end.x - frame.origin.x, outline.end.y - frame.origin.y)
    gap_mm = math.hypot(gap.x, gap.y)
    path = ("rooms", name, "walls")
    if gap_mm > CLOSING_TOLERANCE_MM:
        along = abs(gap.x * frame.heading.x + gap.y * frame.heading.y)
        square = abs(gap.x * frame.heading.y - gap.y * frame.heading.x)
        message = (
            f"the walls of {name} do not close: the last one ends {gap_mm:.0f} mm from the start "
            f"of the first ({along:.0f} mm along the first wall, {square:.0f} mm square to it)"
        )
        hint = 'measure again, or give an outer corner "turn: left"'
        ledger.problem(Code.WALLS, message, path, hint)
    elif outline.end_heading != frame.heading:
        message = f"the walls of {name} close, but not with a corner at the start of the first wall"
        ledger.problem(Code.WALLS, message, path, 'check the "turn" of each wall')


def _walls_of(
    room: str, words: RoomWords, frame: Frame, names: WallNames, ledger: Ledger
) -> list[Wall]:
    letters = list(words.walls)
    outline = outline_of(words, frame)
    walls: list[Wall] = []
    for index, traced in enumerate(outline.walls):
        wall = words.walls[traced.letter]
        path = ("rooms", room, "walls", traced.letter)
        height_mm = words.height if wall.height is None else wall.height
        walls.append(
            Wall(
                name=names.name(room, traced.letter),
                room=room,
                length_mm=wall.length,
                height_mm=height_mm,
                start=traced.start,
                direction=traced.direction,
                inward=traced.inward,
                next_wall=names.name(room, letters[(index + 1) % len(letters)]),
                openings=_openings(wall, path, height_mm, ledger),
                letter=traced.letter,
            )
        )
    _check_closed(room, outline, frame, ledger)
    return walls


def _north_letter(room: str, words: RoomWords, place: RoomPlace, ledger: Ledger) -> str:
    """Return the letter of the wall to the north, "" when nothing tells it."""
    if words.north is None:
        if place.north is not None:
            return _letter_to_the_north(words, place)
        reason = "no north wall is named; the plan has the first wall at its top"
        if place.frame.heading != EAST:
            reason = "no north wall is named; the plan lies as the rooms before it do"
        ledger.default(room, "north", NOT_GIVEN, reason)
        return ""
    letter = words.north.removeprefix("wall ").strip()
    if letter in words.walls:
        return letter
    hint = did_you_mean(letter, words.walls)
    path = ("rooms", room, "north")
    ledger.problem(Code.NAME, f'{room} has no wall "{letter}" to be its north wall', path, hint)
    return next(iter(words.walls), "")


def _letter_to_the_north(words: RoomWords, place: RoomPlace) -> str:
    """Return the longest wall whose outer face looks to the north of the rooms about it."""
    if place.north is None:
        return ""
    north = (-place.north.x, -place.north.y)
    facing = [wall for wall in outline_of(words, place.frame).walls if wall.inward == north]
    return max(facing, key=lambda wall: wall.length_mm).letter if facing else ""


def building_of(ledger: Ledger) -> tuple[dict[str, Room], dict[str, Wall]]:
    """Return rooms and walls by name; what does not fit is noted in the ledger."""
    spec = ledger.loaded.spec.rooms
    names = WallNames((room, letter) for room, words in spec.items() for letter in words.walls)
    places = room_places(ledger, names)
    rooms: dict[str, Room] = {}
    walls: dict[str, Wall] = {}
    for name, words in spec.items():
        if len(words.walls) < 3:
            path = ("rooms", name, "walls")
            ledger.problem(Code.WALLS, f"{name} needs its walls all round, clockwise on plan", path)
        place = places[name]
        own = _walls_of(name, words, place.frame, names, ledger)
        walls.update({wall.name: wall for wall in own})
        north = _north_letter(name, words, place, ledger)
        rooms[name] = Room(
            name=name,
            height_mm=words.height,
            ceiling=words.ceiling or NOT_GIVEN,
            north_wall=names.name(name, north) if north else "",
            walls=tuple(wall.name for wall in own),
            storey=place.storey.name,
            level_mm=place.storey.level_mm,
            storey_east_mm=place.storey_east_mm,
            is_placed=place.is_placed,
        )
        ledger.mark(name, ("rooms", name))
    return rooms, walls
