"""Containment on a wall: its straight pieces, where it turns a corner, where it leaves the wall."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING, Literal

from asfitted.layout.elevation.wall_view import ON_FACE_MM, WallPoint, height_words, on_wall

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.calculate.results import CalculationResults, Section
    from asfitted.geometry import Point3
    from asfitted.resolve.installation import Containment, Installation, Wall

JOINT_MM = 5.0  # ends nearer than this are the same joint
Side = Literal["left", "right"]


@dataclass(frozen=True)
class RunPiece:
    """A straight piece of a run on a wall, its ends from left to right (or bottom to top)."""

    run: Containment
    index: int  # which piece of the run
    start: WallPoint
    end: WallPoint

    @property
    def is_level(self) -> bool:
        """Whether the piece keeps its height."""
        return abs(self.end.up - self.start.up) < 1.0

    @property
    def level(self) -> str:
        """Level with what it is measured to, "T/O +2900"; both ends of an upright piece."""
        if self.is_level:
            return level_words(self.run, self.start.up)
        low, high = height_words(self.start.up), height_words(self.end.up)
        return f"from {low} to {high}"

    @property
    def shown_mm(self) -> float:
        """True size across the piece as seen: depth when level, width when upright."""
        return self.run.height_mm if self.is_level else self.run.width_mm

    @property
    def below_mm(self) -> float:
        """How far the lower (left) edge lies below (left of) the line of the level."""
        if not self.is_level:
            return self.shown_mm / 2
        share = {"T/O": 1.0, "U/S": 0.0, "C/L": 0.5}[self.run.level_of]
        return self.shown_mm * share


@dataclass(frozen=True)
class CornerFlag:
    """A run or a clipped cable that goes on round a corner. Its twin next door says the same.

    ``side`` is the corner of the wall that the flag stands on; ``to`` the wall it goes on to.
    """

    tag: str
    words: str
    level: str
    cables: tuple[str, ...]
    side: Side
    wall: str
    to: str
    up_mm: float
    to_name: str = ""  # the wall by its letter, as on the corner
    to_along_mm: float = 0.0  # where the corner is on that wall

    @property
    def shared(self) -> tuple[str, str, str, tuple[str, ...]]:
        """What must be the same on both sides of the corner: tag, size, level, contents."""
        return (self.tag, self.words, self.level, self.cables)


@dataclass(frozen=True)
class Crossing:
    """The place where a run leaves a wall overhead: it is seen there in cross-section."""

    run: Containment
    at: WallPoint
    to: str  # wall it goes over to, "" when unknown
    cables: tuple[str, ...]
    to_name: str = ""
    to_along_mm: float = 0.0

    @property
    def level(self) -> str:
        """Level with what it is measured to."""
        return level_words(self.run, self.at.up)


@dataclass(frozen=True)
class DeclaredEnd:
    """Where a length that is only declared (buried, hidden) starts at a wall."""

    run: Containment
    at: WallPoint


def level_words(run: Containment, up_mm: float) -> str:
    """Return a level as printed on containment, never a bare figure."""
    return f"{run.level_of} {height_words(up_mm)}"


def pieces_on(installation: Installation, wall: Wall) -> tuple[RunPiece, ...]:
    """Return every straight piece of containment on a wall, in the order of the job."""
    found = []
    for run in installation.containment.values():
        for index, (name, (a, b)) in enumerate(zip(run.walls, pairwise(run.path), strict=False)):
            if name == wall.name:
                ends = sorted((on_wall(wall, a), on_wall(wall, b)))
                found.append(RunPiece(run, index, ends[0], ends[1]))
    return tuple(found)


def cables_on(results: CalculationResults, piece: RunPiece) -> tuple[str, ...]:
    """Return the cables that lie anywhere in a straight piece of a run, in their order in it."""
    a, b = piece.run.path[piece.index], piece.run.path[piece.index + 1]
    return _in_order(
        tag
        for section in _sections(results, piece.run.tag)
        if all(_is_between(place, a, b) for place in (section.start, section.end))
        for tag in section.cables
    )


def _is_between(place: Point3, a: Point3, b: Point3) -> bool:
    return math.dist(a, place) + math.dist(place, b) - math.dist(a, b) < JOINT_MM


def cables_of_run(results: CalculationResults, run: str) -> tuple[str, ...]:
    """Return the cables that lie anywhere in a run."""
    return _in_order(tag for section in _sections(results, run) for tag in section.cables)


def corner_flags(
    installation: Installation, results: CalculationResults, wall: Wall
) -> tuple[CornerFlag, ...]:
    """Return the flags of every run of containment that turns a corner of a wall."""
    flags = []
    for run in installation.containment.values():
        for index, (first, second) in enumerate(pairwise(run.walls)):
            if wall.name not in (first, second) or first == second or not (first and second):
                continue
            joint = run.path[index + 1]
            at = on_wall(wall, joint)
            to = second if wall.name == first else first
            cables = _through_joint(results, run.tag, joint)
            flag = CornerFlag(
                run.tag,
                run.words,
                level_words(run, at.up),
                cables,
                corner_side(wall, at),
                wall.name,
                to,
                at.up,
            )
            flags.append(named_flag(flag, installation, joint))
    return tuple(flags)


def named_flag(flag: CornerFlag, installation: Installation, joint: Point3) -> CornerFlag:
    """Return a flag with the letter of the wall it goes on to, and the place of the joint there."""
    to = installation.walls[flag.to]
    along = min(max(on_wall(to, joint).along, 0.0), to.length_mm)
    return replace(flag, to_name=to.letter or to.name, to_along_mm=along)


def corner_side(wall: Wall, at: WallPoint) -> Side:
    """Return which corner of a wall a place is nearer to."""
    return "left" if at.along < wall.length_mm / 2 else "right"


def crossings_on(
    installation: Installation, results: CalculationResults, wall: Wall
) -> tuple[Crossing, ...]:
    """Return the places where runs leave a wall to cross overhead."""
    found = []
    for run in installation.containment.values():
        for index, name in enumerate(run.walls):
            if name or run.declared_length_m is not None:
                continue
            ends = (run.path[index], run.path[index + 1])
            walls = [
                wall_of(installation, ends[0], _named(run.walls, index - 1)),
                wall_of(installation, ends[1], _named(run.walls, index + 1)),
            ]
            for here, there, place in ((0, 1, ends[0]), (1, 0, ends[1])):
                if walls[here] == wall.name:
                    cables = _through_joint(results, run.tag, place)
                    far = installation.walls.get(walls[there])
                    found.append(
                        Crossing(
                            run,
                            on_wall(wall, place),
                            walls[there],
                            cables,
                            (far.letter or far.name) if far else "",
                            on_wall(far, ends[there]).along if far else 0.0,
                        )
                    )
    return tuple(found)


def declared_on(installation: Installation, wall: Wall) -> tuple[DeclaredEnd, ...]:
    """Return the declared lengths that start at a wall."""
    return tuple(
        DeclaredEnd(run, on_wall(wall, run.path[0]))
        for run in installation.containment.values()
        if run.declared_length_m is not None
        and run.path
        and wall_of(installation, run.path[0], "", depth_mm=1000.0) == wall.name
    )


def wall_of(
    installation: Installation, place: Point3, hint: str, depth_mm: float = ON_FACE_MM
) -> str:
    """Return the wall whose face a place lies on, or "": the hinted one when there is one."""
    if hint:
        return hint
    best: tuple[float, float, str] | None = None
    for wall in installation.walls.values():
        at = on_wall(wall, place)
        if not -JOINT_MM <= at.along <= wall.length_mm + JOINT_MM or abs(at.out) > depth_mm:
            continue
        from_end = min(at.along, wall.length_mm - at.along)
        key = (round(abs(at.out)), -from_end, wall.name)
        if best is None or key < best:
            best = key
    return best[2] if best else ""


def _named(names: tuple[str, ...], index: int) -> str:
    return names[index] if 0 <= index < len(names) else ""


def _sections(results: CalculationResults, run: str) -> list[Section]:
    return [s for s in results.sections.values() if s.containment == run]


def _through_joint(results: CalculationResults, run: str, joint: Point3) -> tuple[str, ...]:
    """Return the cables that pass a joint: those of both pieces that meet there."""
    meeting = [
        section.cables
        for section in _sections(results, run)
        if min(math.dist(joint, section.start), math.dist(joint, section.end)) < JOINT_MM
    ]
    if not meeting:
        return ()
    return tuple(tag for tag in meeting[0] if all(tag in cables for cables in meeting))


def _in_order(tags: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(tags))
