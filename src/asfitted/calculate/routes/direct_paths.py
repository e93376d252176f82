"""Ways without containment: from thing to thing on the walls, or clipped at a given height."""

from __future__ import annotations

import itertools
from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.calculate.routes.board_outlines import beside_boards
from asfitted.calculate.routes.cable_ends import (
    THROUGH_WALL_MM,
    Stretch,
    on_wall,
    reversed_stretches,
)
from asfitted.calculate.routes.take_offs import in_the_air
from asfitted.calculate.routes.wall_strip import (
    Flat,
    Strip,
    flat_length,
    neighbours,
    place_on,
    spot_of,
    ways_round,
)
from asfitted.geometry import Point3

if TYPE_CHECKING:
    from asfitted.calculate.routes.cable_ends import CableEnd
    from asfitted.resolve.installation import Installation, Opening, Wall

# Two things nearer than this by the wall may be joined directly: common practice.
DIRECT_LIMIT_MM = 3000.0
_SAME_LEVEL_MM = 1.0


def direct_path(first: CableEnd, last: CableEnd) -> tuple[Stretch, ...] | None:
    """Return the way straight from one end to the other along one wall or round one corner.

    On the outer face when both are outside; along the soffit when both hang out in the room at
    one level. None: they are not on one wall or neighbouring walls, or an opening is in the way.
    """
    if first.wall is None or last.wall is None:
        return None
    if is_on_one_soffit(first, last):
        return _along_soffit(first, last)
    strip = neighbours(first.wall, last.wall)
    if strip is None:
        return None
    outside = first.outside and last.outside
    a, b = _on_strip(strip, first, last.up_mm), _on_strip(strip, last, first.up_mm)
    path = strip.square_path(a, b)
    if path is None:
        return None
    return (
        *first.to_wall(last.up_mm, stay_outside=outside),
        *as_clipped(on_wall(strip.pieces(path), outside=outside)),
        *reversed_stretches(last.to_wall(first.up_mm, stay_outside=outside)),
    )


def as_clipped(stretches: tuple[Stretch, ...]) -> tuple[Stretch, ...]:
    """Return wall pieces of a way that meets no containment: none of them is a drop."""
    return tuple(replace(s, kind="clipped") if s.kind == "drop" else s for s in stretches)


def _on_strip(strip: Strip, end: CableEnd, towards_mm: float) -> Flat:
    index = next(i for i, wall in enumerate(strip.walls) if wall is end.wall)
    spot = end.spot(towards_mm)
    return Flat(strip.left_of(index) + spot.x, spot.z)


def is_on_one_soffit(first: CableEnd, last: CableEnd) -> bool:
    """Tell whether two ends hang out in one room at one level, such as a row of luminaires."""
    if first.wall is None or last.wall is None or first.wall.room != last.wall.room:
        return False
    hang = first.out_mm > 0 and last.out_mm > 0 and not (first.outside or last.outside)
    return hang and abs(first.up_mm - last.up_mm) <= _SAME_LEVEL_MM


def _along_soffit(first: CableEnd, last: CableEnd) -> tuple[Stretch, ...]:
    if first.wall is None or last.wall is None:
        return ()
    end = place_on(last.wall, last.along_mm, last.up_mm, last.out_mm)
    along, out = (round(value, 6) for value in spot_of(first.wall, end))
    corners = [
        place_on(first.wall, first.along_mm, first.up_mm, first.out_mm),
        place_on(first.wall, along, first.up_mm, first.out_mm),
        place_on(first.wall, along, first.up_mm, out),
        place_on(first.wall, along, last.up_mm, out),
    ]
    return in_the_air(corners)


def clipped_path(
    installation: Installation, first: CableEnd, last: CableEnd, up_mm: float
) -> tuple[tuple[Stretch, ...], str]:
    """Return the way clipped to the walls at a height, the shorter way round the room.

    Returns:
        The pieces and "", or no pieces and why there is no such way.
    """
    if first.wall is None or last.wall is None:
        return (), "an end of it is on no wall, so it cannot be clipped along the walls"
    if first.wall.room != last.wall.room:
        rooms = f"{first.wall.room} and {last.wall.room}"
        return (), f"its ends are in two rooms ({rooms}): clipped direct stays in one room"
    blocked: tuple[Wall, Opening] | None = None
    ways: list[tuple[float, tuple[Stretch, ...]]] = []
    room = installation.rooms[first.wall.room]
    for strip, path in _level_ways(installation, first, last, up_mm):
        crossings = (strip.crossed(a, b) for a, b in itertools.pairwise(path))
        crossed = next((found for found in crossings if found is not None), None)
        if crossed is None:
            ways.append((flat_length(path), on_wall(strip.pieces(path))))
        blocked = blocked or crossed
    if not ways:
        wall, opening = blocked if blocked is not None else (first.wall, None)
        what = (opening.name or opening.kind) if opening is not None else "way"
        at = f"{opening.from_mm / 1000:g} m" if opening is not None else ""
        why = f"clipped at +{up_mm:g} it passes the opening {what} on wall {wall.name} at {at}"
        return (), f"{why}, whichever way round {room.name}; clip it higher or lower"
    way = min(ways, key=lambda found: found[0])[1]
    return (
        *first.to_wall(up_mm),
        *as_clipped(way),
        *reversed_stretches(last.to_wall(up_mm)),
    ), ""


def _level_ways(
    installation: Installation, first: CableEnd, last: CableEnd, up_mm: float
) -> list[tuple[Strip, list[Flat]]]:
    """Return the ways round the room: up or down, level, up or down; shortest first.

    Up and down beside a board or cabinet that stands in the way.
    """
    if first.wall is None or last.wall is None:
        return []
    room = installation.rooms[first.wall.room]
    found = []
    for strip, first_is_left in ways_round(room, installation.walls, first.wall, last.wall):
        right = strip.left_of(len(strip.walls) - 1)
        a, b = first.spot(up_mm), last.spot(up_mm)
        if first_is_left:
            b = Flat(right + b.x, b.z)
        else:
            a = Flat(right + a.x, a.z)
        rightwards = b.x >= a.x
        up_at = (
            a.x - first.along_mm + beside_boards(installation, first, up_mm, rightwards=rightwards)
        )
        down_at = (
            b.x
            - last.along_mm
            + beside_boards(installation, last, up_mm, rightwards=not rightwards)
        )
        path = [a, Flat(up_at, a.z), Flat(up_at, up_mm), Flat(down_at, up_mm)]
        path += [Flat(down_at, b.z), b]
        found.append((strip, [place for place, _ in itertools.groupby(path)]))
    return sorted(found, key=lambda way: flat_length(way[1]))


def fallback_mm(installation: Installation, first: CableEnd, last: CableEnd) -> float:
    """Return a length along the walls for a cable that has no permitted way, mm.

    Square along the walls of one room, else along the axes of the building; openings are not
    heeded. It only keeps a figure on paper: the cable stays marked as having no way.
    """
    stubs = sum(end.out_mm + (THROUGH_WALL_MM if end.outside else 0.0) for end in (first, last))
    if first.wall is None or last.wall is None or first.wall.room != last.wall.room:
        here, there = _in_building(installation, first), _in_building(installation, last)
        return stubs + sum(abs(a - b) for a, b in zip(here, there, strict=True))
    ways = [
        abs(path[-1].x - path[0].x) + abs(path[-1].z - path[0].z)
        for _, path in _level_ways(installation, first, last, first.up_mm)
    ]
    return stubs + min(ways)


def _in_building(installation: Installation, end: CableEnd) -> Point3:
    room = installation.rooms.get(end.wall.room) if end.wall else None
    if room is None:
        return end.at
    return Point3(end.at.x - room.storey_east_mm, end.at.y, end.at.z + room.level_mm)
