"""Where a cable can leave the containment for a given end, and the pieces in between."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.calculate.cable_ends import Stretch, on_wall, total_mm
from asfitted.calculate.wall_strip import Flat, Strip, spot_of
from asfitted.geometry import Point3
from asfitted.resolve.positions import place_on

if TYPE_CHECKING:
    from asfitted.calculate.cable_ends import CableEnd
    from asfitted.calculate.containment_runs import Piece, PieceOnWall, RunsByPlace


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


def take_offs(end: CableEnd, places: RunsByPlace) -> tuple[TakeOff, ...]:
    """Return every place where a cable of an end can leave a run.

    On the wall of the end: the nearest place of each piece of run, reached by a drop at the end's
    own position and a level piece where the run does not pass there. An end hung out in the room
    can also be reached from a crossing overhead, by lines parallel to the walls.
    """
    if end.wall is None:
        return ()
    found = []
    for on in places.on_wall.get(end.wall.name, ()):
        reached = _on_same_wall(end, on)
        if reached is not None:
            found.append(reached)
    if end.out_mm > 0 and not end.outside:
        found += [_from_overhead(end, piece) for piece in places.overhead_in.get(end.wall.room, ())]
    return tuple(found)


def _clamp(value: float, a: float, b: float) -> float:
    return min(max(value, min(a, b)), max(a, b))


def _on_same_wall(end: CableEnd, on: PieceOnWall) -> TakeOff | None:
    if end.wall is None:
        return None
    along = _clamp(end.along_mm, on.along0, on.along1)
    up = _clamp(end.up_mm, on.up0, on.up1)
    span = on.along1 - on.along0 if on.along1 != on.along0 else on.up1 - on.up0
    gone = along - on.along0 if on.along1 != on.along0 else up - on.up0
    share = gone / span if span else 0.0
    at_mm = on.piece.from_mm + share * on.piece.length_mm
    strip = Strip((end.wall,))
    path = strip.square_path(end.spot(up), Flat(along, up))
    if path is None:
        return None
    wall_pieces = on_wall(strip.pieces(path))
    stretches = (*end.to_wall(up), *(replace(s, beside=on.piece.run) for s in wall_pieces))
    return TakeOff(on.piece.run, at_mm, stretches)


def _from_overhead(end: CableEnd, piece: Piece) -> TakeOff:
    """Leave an overhead piece at its nearest place, upright, then level along and out."""
    wall = end.wall
    if wall is None:  # only ends with a wall are asked for
        raise ValueError(end.tag)
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
    return TakeOff(piece.run, at_mm, in_the_air(corners, piece.run))


def in_the_air(corners: list[Point3], beside: str = "") -> tuple[Stretch, ...]:
    """Return straight pieces off the walls between corners, leaving out those of no length."""
    return tuple(
        Stretch("off-wall", "", a, b, beside=beside)
        for a, b in zip(corners, corners[1:], strict=False)
        if a != b
    )
