"""The building: walls with their openings, rooms, places in them and passages between them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from asfitted.geometry import Point, Point3
    from asfitted.resolve.supply_facts import State


@dataclass(frozen=True)
class Opening:
    """A door or window in a wall; distances along and above the floor in mm."""

    kind: Literal["door", "window", "roller door", "opening"]
    name: str
    from_mm: float
    width_mm: float
    sill_mm: float
    height_mm: float


@dataclass(frozen=True)
class Wall:
    """One wall seen from inside: x from its left end, z from finished floor level.

    ``start`` is the left end on plan and ``direction`` the unit vector along it; ``inward`` points
    into the room. The right end of a wall is the left end of the next (clockwise on plan).

    ``name`` is unique in the job: the letter alone ("A"), or the room and the letter ("Hall A")
    where two rooms have a wall of that letter; ``letter`` is always the letter alone. ``start`` is
    in the frame of the drawings (see :class:`Room`): walls of two storeys never lie together.
    """

    name: str
    room: str
    length_mm: float
    height_mm: float
    start: Point
    direction: Point
    inward: Point
    next_wall: str
    openings: tuple[Opening, ...]
    letter: str = ""  # its name within its room, "A"


@dataclass(frozen=True)
class Room:
    """A room: walls in clockwise order, ceiling words, the wall that faces north.

    Rooms of one ``storey`` are drawn on one plan, each where it lies. Storeys stand apart in the
    frame of the drawings, ``storey_east_mm`` from where they are in the building, so that a place
    on plan belongs to one storey only. Heights (z of ``Point3``) count from the room's own floor.
    In the building a place of the room is at x - ``storey_east_mm``, y, z + ``level_mm``.
    """

    name: str
    height_mm: float
    ceiling: str
    north_wall: str
    walls: tuple[str, ...]
    storey: str = ""  # "First floor"; "" when the whole job is on one level and names none
    level_mm: float = 0.0  # finished floor above that of the ground floor
    storey_east_mm: float = 0.0
    is_placed: bool = False  # False: the job does not say how it lies to the rooms before it


@dataclass(frozen=True)
class Position:
    """Where a thing is: which wall, how far along, how high, how far out; and in the building.

    ``wall`` is empty for a place off the walls (the end of a declared run): ``words`` says where.
    ``outside`` means on the outer face of the wall.
    """

    words: str
    wall: str
    along_mm: float
    up_mm: float
    out_mm: float
    outside: bool
    at: Point3
    end_of: str = ""  # tag of the declared run that this is the far end of


@dataclass(frozen=True)
class Passage:
    """A place where cables pass through a wall or a floor, from one room to another.

    ``start`` and ``end`` lie on the faces of the two rooms, each in the coordinates of its own
    room; ``length_mm`` is what a cable needs from the one to the other. A wall passage is as long
    as the wall is thick; a floor passage as high as the one end lies above the other. Sizes,
    ratings and sealing that nobody recorded are None or "not recorded".
    """

    tag: str
    through: Literal["wall", "floor"]
    start: Position
    end: Position
    length_mm: float
    thickness_mm: float | None
    width_mm: float | None
    height_mm: float | None
    bands: tuple[Literal["power", "data"], ...]
    state: State
    fire_resistance_min: float | None  # of the wall or floor; 0 = none needed; None = not recorded
    fire_stopping: Literal["yes", "no", "not recorded"]  # whether the hole is sealed in this job
