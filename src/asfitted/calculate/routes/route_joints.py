"""Where cables can go over from run to run: ends that meet, declared lengths, passages."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.routes.cable_ends import CableEnd, Stretch
from asfitted.calculate.routes.containment_runs import rooms_of, wall_at
from asfitted.calculate.routes.take_offs import REACH_MM, take_offs, take_offs_round_corners
from asfitted.calculate.routes.wall_strip import spot_of
from asfitted.geometry import Point3, distance3

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from asfitted.calculate.routes.containment_runs import Piece, Run, RunsByPlace
    from asfitted.calculate.routes.passage_lines import PassageLine
    from asfitted.calculate.routes.take_offs import TakeOff
    from asfitted.resolve.installation import Installation, Wall

# Within this distance two runs are one installation of tray; from the job's rule for joints.
JOINT_MM = 300.0
_SAME_MM = 1e-6
_START_ON_WALL_MM = 600.0


@dataclass(frozen=True)
class Joint:
    """Two places on runs (or at mouths of passages) that a cable can pass between."""

    run: str
    at_mm: float
    other: str
    other_at_mm: float
    stretches: tuple[Stretch, ...]


def _tidy(distance_mm: float) -> float:
    return round(distance_mm, 6)


def bands_of(
    tag: str, runs: Mapping[str, Run], lines: Mapping[str, PassageLine]
) -> tuple[str, ...]:
    """Return the bands of cable that a run or a passage is for."""
    return lines[tag].passage.bands if tag in lines else runs[tag].containment.bands


def _open_ends(run: Run) -> tuple[tuple[float, Piece], ...]:
    """Return the ends of a run that are somewhere: not the far end of a declared length."""
    start = (0.0, run.pieces[0])
    return (start,) if run.is_declared else (start, (run.length_mm, run.pieces[-1]))


def joints_at_ends(runs: Mapping[str, Run], walls: Mapping[str, Wall]) -> Iterator[Joint]:
    """Yield the joints where the end of a run comes near another run, each once."""
    seen: set[tuple[str, str, float, float]] = set()
    for run in runs.values():
        for at_mm, piece in _open_ends(run):
            place = run.point_at(at_mm)
            for other in runs.values():
                if other is run or not _share_band(run, other) or other.is_declared:
                    continue
                near = _nearest(other, place)
                if near is None or not _same_room(run, piece, other, near[1], walls):
                    continue
                joint = _joint(run, at_mm, other, near[0])
                key = min(
                    (run.tag, other.tag, _tidy(at_mm), _tidy(near[0])),
                    (other.tag, run.tag, _tidy(near[0]), _tidy(at_mm)),
                )
                if key not in seen:
                    seen.add(key)
                    yield joint


def _share_band(run: Run, other: Run) -> bool:
    return bool(set(run.containment.bands) & set(other.containment.bands))


def _joint(run: Run, at_mm: float, other: Run, other_at_mm: float) -> Joint:
    a, b = run.point_at(at_mm), other.point_at(other_at_mm)
    wall = run.piece_at(at_mm).wall
    gap = Stretch("clipped", wall, a, b)
    stretches = (gap,) if gap.length_mm > 1e-6 else ()
    return Joint(run.tag, at_mm, other.tag, other_at_mm, stretches)


def _nearest(run: Run, place: Point3) -> tuple[float, Piece] | None:
    """Return the place of a run nearest to a point, when it is near enough for a joint."""
    best: tuple[float, float, Piece] | None = None
    for piece in run.pieces:
        if _far_off(piece, place):
            continue
        line = [b - a for a, b in zip(piece.start, piece.end, strict=True)]
        to = [p - a for a, p in zip(piece.start, place, strict=True)]
        share = sum(a * b for a, b in zip(line, to, strict=True)) / piece.length_mm**2
        at_mm = piece.from_mm + min(max(share, 0.0), 1.0) * piece.length_mm
        gap = distance3(piece.point_at(at_mm), place)
        if gap <= JOINT_MM and (best is None or gap < best[0]):
            best = gap, at_mm, piece
    return (best[1], best[2]) if best else None


def _far_off(piece: Piece, place: Point3) -> bool:
    return any(
        p < min(a, b) - JOINT_MM or p > max(a, b) + JOINT_MM
        for a, b, p in zip(piece.start, piece.end, place, strict=True)
    )


def _same_room(
    run: Run, piece: Piece, other: Run, other_piece: Piece, walls: Mapping[str, Wall]
) -> bool:
    """Tell whether two pieces can meet: rooms may be drawn without their place in the building."""
    rooms, others = rooms_of(run, piece, walls), rooms_of(other, other_piece, walls)
    return not rooms or not others or bool(rooms & others)


def declared_start(run: Run, walls: Mapping[str, Wall]) -> CableEnd | None:
    """Return the start of a declared run as an end on the wall it leaves from."""
    place = run.pieces[0].start
    wall = wall_at(walls.values(), place, _START_ON_WALL_MM)
    if wall is None:
        return None
    along, out = spot_of(wall, place)
    is_buried = run.containment.depth_mm is not None or "buried" in run.containment.kind
    return CableEnd(
        tag=run.tag,
        wall=wall,
        along_mm=round(along, 6),
        up_mm=place.z,
        out_mm=0.0,
        outside=is_buried or out < -1.0,
        half_height_mm=0.0,
        end_of="",
        at=place,
    )


def ways_to_declared(
    runs: Mapping[str, Run],
    walls: Mapping[str, Wall],
    places: RunsByPlace,
    lines: Mapping[str, PassageLine],
) -> Iterator[Joint]:
    """Yield the ways along its wall from the start of each declared run to the other runs."""
    for run in runs.values():
        start = declared_start(run, walls) if run.is_declared else None
        if start is None:
            continue
        for take_off in take_offs(start, places):
            if set(run.containment.bands) & set(bands_of(take_off.run, runs, lines)):
                yield Joint(run.tag, 0.0, take_off.run, take_off.at_mm, take_off.stretches)


def joints_at_passages(
    installation: Installation,
    runs: Mapping[str, Run],
    lines: Mapping[str, PassageLine],
    places: RunsByPlace,
) -> Iterator[Joint]:
    """Yield the ways between mouths of passages and the runs and other mouths in their rooms.

    A run that comes within the distance of a joint goes on through the mouth. Else a cable is
    clipped: along the wall of the mouth from any distance, round a corner within reach.
    """
    for line in lines.values():
        own = set(line.passage.bands)
        for at_mm, mouth in line.mouths:
            near = [] if mouth.wall is None else list(_runs_near(line.tag, at_mm, mouth, runs))
            yield from (joint for joint in near if own & set(runs[joint.other].containment.bands))
            met = {line.tag, *(joint.other for joint in near)}
            for take_off in _clipped_from(mouth, installation, places, met):
                if own & set(bands_of(take_off.run, runs, lines)):
                    yield Joint(line.tag, at_mm, take_off.run, take_off.at_mm, take_off.stretches)


def _runs_near(tag: str, at_mm: float, mouth: CableEnd, runs: Mapping[str, Run]) -> Iterator[Joint]:
    for run in runs.values():
        near = None if run.is_declared else _nearest(run, mouth.at)
        if near is None or mouth.wall is None or near[1].wall not in ("", mouth.wall.name):
            continue
        gap = Stretch("clipped", mouth.wall.name, mouth.at, run.point_at(near[0]))
        yield Joint(tag, at_mm, run.tag, near[0], (gap,) if gap.length_mm > _SAME_MM else ())


def _clipped_from(
    mouth: CableEnd, installation: Installation, places: RunsByPlace, met: set[str]
) -> list[TakeOff]:
    own = [take_off for take_off in take_offs(mouth, places) if take_off.run not in met]
    everything = {on.piece.run for pieces in places.on_wall.values() for on in pieces}
    others = everything - met - {take_off.run for take_off in own}
    return [*own, *take_offs_round_corners(mouth, places, installation, others, REACH_MM)]
