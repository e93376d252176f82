"""Containment runs as lines in the building: straight pieces with a distance along the run."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.routes.wall_strip import spot_of
from asfitted.geometry import Point3, distance3
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from asfitted.resolve.installation import Containment, Installation, Wall

_ON_WALL_MM = 5.0


@dataclass(frozen=True)
class Piece:
    """A straight piece of a run; ``from_mm`` is its distance from the start of the run."""

    run: str
    wall: str  # "" for an overhead crossing or a declared length
    start: Point3
    end: Point3
    from_mm: float
    length_mm: float

    @property
    def to_mm(self) -> float:
        """Distance of its end from the start of the run, mm."""
        return self.from_mm + self.length_mm

    def point_at(self, distance_mm: float) -> Point3:
        """Return the place so far from the start of the run."""
        share = (distance_mm - self.from_mm) / self.length_mm if self.length_mm else 0.0
        return Point3(*(a + (b - a) * share for a, b in zip(self.start, self.end, strict=True)))


@dataclass(frozen=True)
class Run:
    """One containment run with its pieces in order."""

    containment: Containment
    pieces: tuple[Piece, ...]

    @property
    def tag(self) -> str:
        """Tag of the run."""
        return self.containment.tag

    @property
    def length_mm(self) -> float:
        """Length of the run, mm."""
        return self.pieces[-1].to_mm

    @property
    def is_declared(self) -> bool:
        """Whether only the length of the run is known, not its path."""
        return self.containment.declared_length_m is not None

    def piece_at(self, distance_mm: float) -> Piece:
        """Return the piece so far along the run."""
        starts = [piece.from_mm for piece in self.pieces]
        return self.pieces[max(bisect_right(starts, distance_mm) - 1, 0)]

    def point_at(self, distance_mm: float) -> Point3:
        """Return the place so far along the run."""
        return self.piece_at(distance_mm).point_at(distance_mm)


def run_of(containment: Containment) -> Run | None:
    """Return a run as lines, or None where it has no length."""
    tag, path = containment.tag, containment.path
    if containment.declared_length_m is not None and path:
        length = containment.declared_length_m * 1000.0
        return Run(containment, (Piece(tag, "", path[0], path[-1], 0.0, length),))
    pieces: list[Piece] = []
    gone = 0.0
    for wall, start, end in zip(containment.walls, path, path[1:], strict=False):
        length = distance3(start, end)
        if length > 0:
            pieces.append(Piece(tag, wall, start, end, gone, length))
            gone += length
    return Run(containment, tuple(pieces)) if pieces else None


def runs_of(installation: Installation) -> dict[str, Run]:
    """Return every run that is there to be used, in the order of the spec."""
    found = {}
    for tag, containment in installation.containment.items():
        run = run_of(containment) if containment.state is not State.REMOVED else None
        if run is not None:
            found[tag] = run
    return found


def wall_at(walls: Iterable[Wall], place: Point3, within_mm: float) -> Wall | None:
    """Return the wall that a place is on or nearest to, or None when none is that near."""
    best: tuple[float, Wall] | None = None
    for wall in walls:
        along, out = spot_of(wall, place)
        past = max(-along, along - wall.length_mm, 0.0)
        off = max(past, abs(out))
        if off <= within_mm and (best is None or off < best[0]):
            best = off, wall
    return best[1] if best else None


@dataclass(frozen=True)
class PieceOnWall:
    """A piece of run in the coordinates of the wall that carries it, mm."""

    piece: Piece
    along0: float
    up0: float
    along1: float
    up1: float


@dataclass(frozen=True)
class RunsByPlace:
    """Which pieces of run a thing on a wall or in a room can be cabled to."""

    on_wall: Mapping[str, tuple[PieceOnWall, ...]]
    overhead_in: Mapping[str, tuple[Piece, ...]]  # by room


def runs_by_place(runs: Mapping[str, Run], walls: Mapping[str, Wall]) -> RunsByPlace:
    """Sort the pieces of all runs by wall and, for crossings overhead, by room.

    A crossing overhead also counts as a point of the wall that each of its ends is at.
    """
    on_wall: dict[str, list[PieceOnWall]] = {}
    overhead: dict[str, list[Piece]] = {}
    for run in runs.values():
        for piece in () if run.is_declared else run.pieces:
            wall = walls.get(piece.wall)
            if wall is not None:
                on_wall.setdefault(wall.name, []).append(_on_wall(piece, wall))
                continue
            for room in sorted(rooms_of(run, piece, walls)):
                overhead.setdefault(room, []).append(piece)
            for place, gone in ((piece.start, piece.from_mm), (piece.end, piece.to_mm)):
                touched = wall_at(walls.values(), place, _ON_WALL_MM)
                if touched is not None:
                    point = Piece(run.tag, touched.name, place, place, gone, 0.0)
                    on_wall.setdefault(touched.name, []).append(_on_wall(point, touched))
    return RunsByPlace(
        {wall: tuple(found) for wall, found in on_wall.items()},
        {room: tuple(found) for room, found in overhead.items()},
    )


def _on_wall(piece: Piece, wall: Wall) -> PieceOnWall:
    # rounding takes off the dust of the projection, so that an exact drop stays exact
    along0 = round(spot_of(wall, piece.start)[0], 6)
    along1 = round(spot_of(wall, piece.end)[0], 6)
    return PieceOnWall(piece, along0, piece.start.z, along1, piece.end.z)


def rooms_of(run: Run, piece: Piece, walls: Mapping[str, Wall]) -> set[str]:
    """Return the rooms a piece is in: that of its wall, or of the walls before and after it."""
    if piece.wall in walls:
        return {walls[piece.wall].room}
    index = run.pieces.index(piece)
    beside = [*run.pieces[max(index - 1, 0) : index], *run.pieces[index + 1 : index + 2]]
    found = {walls[other.wall].room for other in beside if other.wall in walls}
    for place in (piece.start, piece.end):
        touched = wall_at(walls.values(), place, _ON_WALL_MM)
        if touched is not None:
            found.add(touched.room)
    return found
