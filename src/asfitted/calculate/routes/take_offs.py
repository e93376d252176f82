"""Where a cable can leave the containment for a given end, and the pieces in between."""

from __future__ import annotations

import itertools
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.calculate.routes.board_outlines import sides_of_boards
from asfitted.calculate.routes.cable_ends import Stretch, on_wall, total_mm
from asfitted.calculate.routes.wall_strip import (
    Flat,
    Strip,
    beside_openings,
    place_on,
    spot_of,
    ways_round,
)

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

    from asfitted.calculate.routes.board_outlines import Outline
    from asfitted.calculate.routes.cable_ends import CableEnd
    from asfitted.calculate.routes.containment_runs import Piece, PieceOnWall, RunsByPlace
    from asfitted.geometry import Point3
    from asfitted.resolve.installation import Installation, Wall

# So far along the walls a cable may be clipped to a run round the corner: common practice.
REACH_MM = 3000.0


@dataclass(frozen=True)
class TakeOff:
    """A place on a run where a cable leaves for an end; ``stretches`` lead from the end to it."""

    run: str
    at_mm: float
    stretches: tuple[Stretch, ...]

    @property
    def length_mm(self) -> float:
        """Length outside the containment, mm."""
        return total_mm(self.stretches)


def take_offs(
    end: CableEnd, places: RunsByPlace, outlines: Sequence[Outline] = ()
) -> tuple[TakeOff, ...]:
    """Return every place where a cable of an end can leave a run.

    On the wall of the end: the nearest place of each piece of run, reached by a drop at the end's
    own position and a level piece where the run does not pass there; beside a board whose
    outline bars the drop. An end hung out in the room can also be reached from a crossing overhead,
    by lines parallel to the walls.
    """
    if end.wall is None:
        return ()
    found: list[TakeOff] = []
    for on in places.on_wall.get(end.wall.name, ()):
        found += _beside_boards(end, end.wall, on, outlines) or _on_same_wall(end, end.wall, on)
    if end.out_mm > 0 and not end.outside:
        found += [
            _from_overhead(end, end.wall, piece)
            for piece in places.overhead_in.get(end.wall.room, ())
        ]
    return tuple(found)


def _clamp(value: float, a: float, b: float) -> float:
    return min(max(value, min(a, b)), max(a, b))


def _on_same_wall(end: CableEnd, wall: Wall, on: PieceOnWall) -> list[TakeOff]:
    """Return the nearest place of a piece, and places beside an opening that bars the drop."""
    strip = Strip((wall,))
    along = _clamp(end.along_mm, on.along0, on.along1)
    up = _clamp(end.up_mm, on.up0, on.up1)
    tries = [along]
    start = end.spot(up)
    if strip.crossed(start, Flat(start.x, up)) is not None:
        tries += [_clamp(x, on.along0, on.along1) for x in beside_openings(wall)]
    found = []
    for x in dict.fromkeys(tries):
        path = strip.square_path(start, Flat(x, up))
        if path is not None:
            pieces = (replace(s, run_up_mm=up) for s in on_wall(strip.pieces(path)))
            at_mm = _distance_along(on, x, up)
            found.append(TakeOff(on.piece.run, at_mm, (*end.to_wall(up), *pieces)))
    return found


def _beside_boards(
    end: CableEnd, wall: Wall, on: PieceOnWall, outlines: Sequence[Outline]
) -> list[TakeOff]:
    """Return the ways to a piece that pass beside the boards that bar the drop, shortest first."""
    strip, up = Strip((wall,)), _clamp(end.up_mm, on.up0, on.up1)
    start, found = end.spot(up), []
    for side in sides_of_boards(outlines, end, up):
        along = _clamp(side, on.along0, on.along1)
        path = [start, Flat(side, start.z), Flat(side, up), Flat(along, up)]
        if strip.is_clear(path):
            pieces = (replace(s, run_up_mm=up) for s in on_wall(strip.pieces(path)))
            at_mm = _distance_along(on, along, up)
            found.append(TakeOff(on.piece.run, at_mm, (*end.to_wall(up), *pieces)))
    return sorted(found, key=lambda take_off: take_off.length_mm)


def take_offs_round_corners(
    end: CableEnd,
    places: RunsByPlace,
    installation: Installation,
    runs: Collection[str],
    within_mm: float,
) -> tuple[TakeOff, ...]:
    """Return where runs on the other walls of the room are reached by legs clipped along the walls.

    Args:
        end: The end of the cable.
        places: Pieces of run by wall.
        installation: The room and its walls.
        runs: Tags of the runs to reach.
        within_mm: Greatest distance along the walls, mm.
    """
    if end.wall is None:
        return ()
    room, walls = installation.rooms[end.wall.room], installation.walls
    found = []
    for name in room.walls:
        pieces = [on for on in places.on_wall.get(name, ()) if on.piece.run in runs]
        if name == end.wall.name or not pieces:
            continue
        for strip, end_is_left in ways_round(room, walls, end.wall, walls[name]):
            ways = (_along_walls(end, on, strip, end_is_left, within_mm) for on in pieces)
            found += [way for way in ways if way is not None]
    return tuple(found)


def _along_walls(
    end: CableEnd, on: PieceOnWall, strip: Strip, end_is_left: bool, within_mm: float
) -> TakeOff | None:
    """Return the way to the nearest place of a piece at the other end of a strip of walls."""
    right = strip.left_of(len(strip.walls) - 1)
    end_left, run_left = (0.0, right) if end_is_left else (right, 0.0)
    up = _clamp(end.up_mm, on.up0, on.up1)
    spot = end.spot(up)
    start = Flat(end_left + spot.x, spot.z)
    along = _clamp(start.x - run_left, on.along0, on.along1)
    arrive = Flat(run_left + along, up)
    path = strip.square_path(start, arrive)
    if path is None or abs(arrive.x - start.x) > within_mm:
        return None
    pieces = (replace(s, run_up_mm=up) for s in on_wall(strip.pieces(path)))
    at_mm = _distance_along(on, along, up)
    return TakeOff(on.piece.run, at_mm, (*end.to_wall(up), *pieces))


def _distance_along(on: PieceOnWall, along: float, up: float) -> float:
    is_level = on.along1 != on.along0
    span = on.along1 - on.along0 if is_level else on.up1 - on.up0
    gone = along - on.along0 if is_level else up - on.up0
    return on.piece.from_mm + (gone / span if span else 0.0) * on.piece.length_mm


def _from_overhead(end: CableEnd, wall: Wall, piece: Piece) -> TakeOff:
    """Leave an overhead piece at its nearest place, upright, then level along and out."""
    a0, o0 = spot_of(wall, piece.start)
    a1, o1 = spot_of(wall, piece.end)
    shares = [0.0, 1.0]
    if a1 != a0:
        shares.append(_clamp((end.along_mm - a0) / (a1 - a0), 0.0, 1.0))
    if o1 != o0:
        shares.append(_clamp((end.out_mm - o0) / (o1 - o0), 0.0, 1.0))

    def distance(share: float) -> float:
        off = abs(a0 + (a1 - a0) * share - end.along_mm)
        return off + abs(o0 + (o1 - o0) * share - end.out_mm)

    share = min(shares, key=lambda s: (round(distance(s), 6), s))
    along, out = round(a0 + (a1 - a0) * share, 6), round(o0 + (o1 - o0) * share, 6)
    level = piece.start.z + (piece.end.z - piece.start.z) * share
    own = end.leave_mm(level)
    high = max(own, level)
    corners = [
        place_on(wall, end.along_mm, own, end.out_mm),
        place_on(wall, end.along_mm, high, end.out_mm),
        place_on(wall, along, high, end.out_mm),
        place_on(wall, along, high, out),
        place_on(wall, along, level, out),
    ]
    at_mm = piece.from_mm + share * piece.length_mm
    return TakeOff(piece.run, at_mm, in_the_air(corners))


def in_the_air(corners: list[Point3]) -> tuple[Stretch, ...]:
    """Return straight pieces off the walls between corners, leaving out those of no length."""
    return tuple(Stretch("off-wall", "", a, b) for a, b in itertools.pairwise(corners) if a != b)
