"""Which wall it is, for people who do not draw: by what is in it, or beside which it lies."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.resolve.building_facts import Opening, Wall
    from asfitted.resolve.installation import Installation, Position

CORNERS = 4  # only in a room of four walls does one wall lie opposite another
_FIRST = ("roller door", "door", "opening", "window")  # what a visitor knows a wall by, best first


def wall_known_by(position: Position, installation: Installation) -> str:
    """Return what a visitor knows the wall of a place by; nothing where no opening tells.

    A thing on a wall with a door or window lies left of it, right of it, above or below it. A wall
    without one is told by the wall beside it or opposite, as one stands in the room and faces that.
    Of openings that bear one name in a room none is named: a visitor could take one for the other.
    """
    wall = installation.walls.get(position.wall)
    if wall is None:
        return ""
    if opening := _opening_of(wall, installation):
        return f"{_side(position, opening)} the {opening.name or opening.kind}"
    return "" if position.outside else _by_another_wall(wall, installation)


def _by_another_wall(wall: Wall, installation: Installation) -> str:
    """Return where a wall lies to one that has an opening, as seen from inside the room."""
    walls, room = installation.walls, installation.rooms[wall.room]
    after = walls[wall.next_wall]
    before = next(walls[name] for name in room.walls if walls[name].next_wall == wall.name)
    looks = []
    if _is_inner_corner(wall, after):
        looks.append(("on your left as you stand inside and face", after))
    if _is_inner_corner(before, wall):
        looks.append(("on your right as you stand inside and face", before))
    if len(room.walls) == CORNERS:
        looks.append(("opposite", walls[after.next_wall]))
    known = [(how, found) for how, w in looks if (found := _opening_of(w, installation))]
    if not known:
        return ""
    how, opening = min(known, key=lambda each: _FIRST.index(each[1].kind))
    return f"{how} the {opening.name or opening.kind}"


def _is_inner_corner(wall: Wall, after: Wall) -> bool:
    """Tell whether a wall turns into the room where it ends, as at each corner of a plain room."""
    turn = wall.inward.x * after.direction.x + wall.inward.y * after.direction.y
    return turn > 0


def _opening_of(wall: Wall, installation: Installation) -> Opening | None:
    """Return the opening that a wall is best known by, if one has a name of its own in the room."""
    room = installation.rooms[wall.room]
    names = [one.name or one.kind for w in room.walls for one in installation.walls[w].openings]
    own = [one for one in wall.openings if names.count(one.name or one.kind) == 1]
    return min(own, key=lambda one: (_FIRST.index(one.kind), one.from_mm), default=None)


def _side(position: Position, opening: Opening) -> str:
    """Return on which side of an opening a thing is, as one faces that side of the wall."""
    left, right = opening.from_mm, opening.from_mm + opening.width_mm
    if left <= position.along_mm <= right:
        middle_mm = opening.sill_mm + opening.height_mm / 2
        return "above" if position.up_mm > middle_mm else "below"
    is_left = (position.along_mm < left) != position.outside
    return f"on the {'left' if is_left else 'right'} of"
