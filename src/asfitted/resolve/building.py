"""Rooms and walls on plan.

Walls go clockwise on plan as seen from above. The first wall of a room starts at the room's origin
and runs along +x with the room on its right; each next wall starts where the last one ends, turned
to the right (an inner corner) or, where the spec says so, to the left (an outer corner).
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.resolve.installation import Opening, Room, Wall
from asfitted.spec.problem_codes import Code
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from asfitted.resolve.ledger import Ledger
    from asfitted.spec.load_yaml import SpecPath
    from asfitted.spec.rooms import RoomWords, WallWords

CLOSING_TOLERANCE_MM = 10.0
ROOM_GAP_MM = 3000.0  # rooms whose relation is not in the spec stand side by side on plan


def _turned(direction: Point, turn: str) -> Point:
    x, y = direction
    turned = (y, -x) if turn == "right" else (-y, x)
    return Point(turned[0] + 0.0, turned[1] + 0.0)  # + 0.0 makes a minus nought a nought


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


def _check_closed(name: str, end: Point, origin: Point, heading: Point, ledger: Ledger) -> None:
    gap_mm = math.dist(end, origin)
    path = ("rooms", name, "walls")
    if gap_mm > CLOSING_TOLERANCE_MM:
        message = (
            f"the walls of {name} do not close: the last one ends {gap_mm:.0f} mm from the start "
            f"of the first ({abs(end.x - origin.x):.0f} mm along the first wall, "
            f"{abs(end.y - origin.y):.0f} mm square to it)"
        )
        hint = 'measure again, or give an outer corner "turn: left"'
        ledger.problem(Code.WALLS, message, path, hint)
    elif heading != Point(1.0, 0.0):
        message = f"the walls of {name} close, but not with a corner at the start of the first wall"
        ledger.problem(Code.WALLS, message, path, 'check the "turn" of each wall')


def _walls_of(name: str, words: RoomWords, origin: Point, ledger: Ledger) -> list[Wall]:
    names = list(words.walls)
    start, direction = origin, Point(1.0, 0.0)
    walls: list[Wall] = []
    for index, (wall_name, wall) in enumerate(words.walls.items()):
        path = ("rooms", name, "walls", wall_name)
        height_mm = words.height if wall.height is None else wall.height
        walls.append(
            Wall(
                name=wall_name,
                room=name,
                length_mm=wall.length,
                height_mm=height_mm,
                start=start,
                direction=direction,
                inward=_turned(direction, "right"),
                next_wall=names[(index + 1) % len(names)],
                openings=_openings(wall, path, height_mm, ledger),
            )
        )
        start = start.moved(direction.x * wall.length, direction.y * wall.length)
        direction = _turned(direction, wall.turn)
    _check_closed(name, start, origin, direction, ledger)
    return walls


def _north_wall(name: str, words: RoomWords, ledger: Ledger) -> str:
    first = next(iter(words.walls), "")
    if words.north is None:
        reason = "the spec names no north wall; the plan has the first wall at its top"
        ledger.default(name, "north", NOT_GIVEN, reason)
        return ""
    wall = words.north.removeprefix("wall ").strip()
    if wall in words.walls:
        return wall
    hint = did_you_mean(wall, words.walls)
    path = ("rooms", name, "north")
    ledger.problem(Code.NAME, f'{name} has no wall "{wall}" to be its north wall', path, hint)
    return first


NOT_GIVEN = "not recorded"


def _check_names(name: str, words: RoomWords, walls: dict[str, Wall], ledger: Ledger) -> None:
    if len(words.walls) < 3:
        path = ("rooms", name, "walls")
        ledger.problem(Code.WALLS, f"{name} needs its walls all round, clockwise on plan", path)
    for wall in words.walls:
        if wall in walls:
            message = f'wall "{wall}" is in {walls[wall].room} already'
            hint = "give every wall of the job its own letter"
            ledger.problem(Code.NAME_TWICE, message, ("rooms", name, "walls", wall), hint)


def building_of(ledger: Ledger) -> tuple[dict[str, Room], dict[str, Wall]]:
    """Return rooms and walls by name; what does not fit is noted in the ledger."""
    rooms: dict[str, Room] = {}
    walls: dict[str, Wall] = {}
    origin = Point(0.0, 0.0)
    for name, words in ledger.loaded.spec.rooms.items():
        _check_names(name, words, walls, ledger)
        own = _walls_of(name, words, origin, ledger)
        walls.update({wall.name: wall for wall in own if wall.name not in walls})
        rooms[name] = Room(
            name=name,
            height_mm=words.height,
            ceiling=words.ceiling or NOT_GIVEN,
            north_wall=_north_wall(name, words, ledger),
            walls=tuple(words.walls),
        )
        ledger.mark(name, ("rooms", name))
        if rooms and origin.x:
            reason = "the spec does not say how the rooms lie to each other; drawn side by side"
            ledger.default(name, "place on plan", f"{origin.x:g} mm east", reason)
        east_mm = max((w.start.x for w in own), default=origin.x)
        west_mm = min((w.start.x for w in own), default=origin.x)
        origin = Point(east_mm + (origin.x - west_mm) + ROOM_GAP_MM, 0.0)
    return rooms, walls
