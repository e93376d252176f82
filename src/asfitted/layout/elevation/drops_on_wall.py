"""Cables on a wall outside containment: drops, clipped lengths, ways through and off the wall."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from asfitted.layout.elevation.runs_on_wall import (
    CornerFlag,
    corner_side,
    level_words,
    named_flag,
)
from asfitted.layout.elevation.things_on_wall import name_on_wall
from asfitted.layout.elevation.wall_view import OUTSIDE_MM, WallPoint, height_words, on_wall
from asfitted.layout.given_words import state_behind
from asfitted.layout.surveyed_ways import all_told
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.calculate.results import CableRoute, CalculationResults, RouteLeg
    from asfitted.resolve.installation import Installation, Wall

Way = Literal["drop", "clipped", "through-wall", "off-wall"]
MOST_NAMED = 3  # cables in the head of a flag
_CLIPPED = ("", "clipped", "clipped direct")
_NOT_ON_WALL = ("containment", "declared", "passage")


@dataclass(frozen=True)
class Stretch:
    """A straight length on a wall with all the cables that share it, lower or left end first.

    ``top`` and ``foot`` say what it comes from and goes to at its upper (right) and lower (left)
    end. ``serves`` is the thing at the end of the cable that the length leads to.
    """

    way: Way
    enclosure: str  # "20 mm steel conduit", "" for clipped direct
    start: WallPoint
    end: WallPoint
    cables: tuple[str, ...]
    foot: str
    top: str
    serves: str
    state: State = State.NEW
    title: str = ""  # tags, way and circuits in words, shown on hover
    told: tuple[str, ...] = ()  # tags of its cables as written, marked where not surveyed

    @property
    def is_upright(self) -> bool:
        """Whether it goes up and down the wall."""
        return abs(self.end.up - self.start.up) > abs(self.end.along - self.start.along)

    @property
    def is_outside(self) -> bool:
        """Whether it lies on the outer face."""
        return self.start.out < OUTSIDE_MM and self.end.out < OUTSIDE_MM

    @property
    def holder(self) -> str:
        """What the cables are held by, in words."""
        return self.enclosure or "clipped"


def stretches_on(
    installation: Installation, results: CalculationResults, wall: Wall
) -> tuple[Stretch, ...]:
    """Return every length outside containment on a wall, left to right; equal ones are one."""
    merged: dict[tuple[object, ...], Stretch] = {}
    for cable, route in results.routes.items():
        for index, leg in enumerate(route.legs):
            if leg.wall != wall.name or leg.kind in _NOT_ON_WALL:
                continue
            made = _stretch(installation, wall, cable, route, index)
            ends = (_rounded(made.start), _rounded(made.end))
            key = (made.way, made.enclosure, made.state, *ends)
            known = merged.get(key)
            if known is None:
                merged[key] = made
            elif cable not in known.cables:
                merged[key] = replace(known, cables=(*known.cables, cable))
    titled = (
        replace(s, title=_title(installation, s), told=all_told(s.cables, results))
        for s in merged.values()
    )
    return tuple(sorted(titled, key=lambda s: (s.start, s.end, s.cables)))


def _title(installation: Installation, stretch: Stretch) -> str:
    """Return tags, way and circuits of a length in words."""
    circuits = dict.fromkeys(
        installation.cables[tag].circuit for tag in stretch.cables if tag in installation.cables
    )
    named = [
        f"{tag} {installation.circuits[tag].name}" if tag in installation.circuits else tag
        for tag in circuits
        if tag
    ]
    state = state_behind(stretch.state)
    return f"{' '.join(stretch.cables)} {stretch.holder}{state}: {', '.join(named)}".rstrip(": ")


def clipped_corner_flags(
    installation: Installation, results: CalculationResults, wall: Wall
) -> tuple[CornerFlag, ...]:
    """Return the flags of cables clipped direct that go on round a corner of a wall.

    Cables that turn at one height in the same enclosure have one flag.
    """
    flags: dict[tuple[str, str, str, int], CornerFlag] = {}
    for cable, route in results.routes.items():
        for first, second in zip(route.legs, route.legs[1:], strict=False):
            if not _turns_clipped(wall, first, second):
                continue
            here, to = (first, second.wall) if first.wall == wall.name else (second, first.wall)
            at = on_wall(wall, first.end)
            words = _enclosure(installation, cable, here) or "clipped direct"
            side = corner_side(wall, at)
            key = (side, to, words, round(at.up))
            known = flags.get(key)
            cables = (*known.cables, cable) if known else (cable,)
            cables = tuple(dict.fromkeys(cables))
            level = f"C/L {height_words(at.up)}"
            tag = _tags(cables)
            flag = CornerFlag(tag, words, level, cables, side, wall.name, to, at.up)
            flags[key] = named_flag(flag, installation, first.end)
    return tuple(flags.values())


def _turns_clipped(wall: Wall, first: RouteLeg, second: RouteLeg) -> bool:
    """Tell whether a cable outside containment goes on from or to a wall between two legs."""
    return (
        "clipped" in (first.kind, second.kind)
        and wall.name in (first.wall, second.wall)
        and first.wall != second.wall
        and bool(first.wall and second.wall)
        and "containment" not in (first.kind, second.kind)
        and "passage" not in (first.kind, second.kind)
    )


def _tags(cables: Sequence[str]) -> str:
    """Return how a flag names its cables."""
    return " ".join(cables) if len(cables) <= MOST_NAMED else f"{cables[0]} to {cables[-1]}"


def _rounded(point: WallPoint) -> tuple[int, int, int]:
    return (round(point.along), round(point.up), round(point.out))


def _enclosure(installation: Installation, cable: str, leg: RouteLeg) -> str:
    """Return what a leg runs in with its size, as the spec names the drops of its cable."""
    if leg.enclosure in _CLIPPED or leg.kind not in ("drop", "clipped"):
        return ""
    known = installation.cables.get(cable)
    return known.drop if known is not None and known.drop else leg.enclosure


def _stretch(
    installation: Installation, wall: Wall, cable: str, route: CableRoute, index: int
) -> Stretch:
    leg = route.legs[index]
    a, b = on_wall(wall, leg.start), on_wall(wall, leg.end)
    before = _beside(installation, cable, route.legs, index=index, step=-1, up_mm=a.up)
    after = _beside(installation, cable, route.legs, index=index, step=+1, up_mm=b.up)
    serves = _serves(installation, cable, route.legs, index)
    way: Way = leg.kind  # type: ignore[assignment] # containment and declared are left out above
    holder = _enclosure(installation, cable, leg)
    known = installation.cables.get(cable)
    state = known.state if known is not None else State.NEW
    if (a.up, a.along) <= (b.up, b.along):
        return Stretch(way, holder, a, b, (cable,), before, after, serves, state)
    return Stretch(way, holder, b, a, (cable,), after, before, serves, state)


def _beside(
    installation: Installation,
    cable: str,
    legs: Sequence[RouteLeg],
    *,
    index: int,
    step: int,
    up_mm: float,
) -> str:
    """Return what a leg meets at one end: a run with its level, a thing, or the next length."""
    other = index + step
    if not 0 <= other < len(legs):
        ends = installation.cables.get(cable)
        if ends is None:
            return f"end of {cable}"
        return name_on_wall(installation, ends.from_end if step < 0 else ends.to_end)
    leg = legs[other]
    if leg.containment and leg.containment in installation.containment:
        run = installation.containment[leg.containment]
        return f"{run.tag} {level_words(run, up_mm)}"
    held = _enclosure(installation, cable, leg) or "clipped"
    words = {"through-wall": "through wall", "off-wall": "off the wall"}.get(leg.kind, held)
    return f"{words} {height_words(up_mm)}"


def _serves(installation: Installation, cable: str, legs: Sequence[RouteLeg], index: int) -> str:
    """Return the nearer end of the cable, counted in legs: the thing a drop belongs to."""
    if cable not in installation.cables:
        return ""
    ends = installation.cables[cable]
    runs = [i for i, leg in enumerate(legs) if leg.kind in ("containment", "declared")]
    is_before = any(i > index for i in runs) and not any(i < index for i in runs)
    return name_on_wall(installation, ends.from_end if is_before else ends.to_end)


def upright(stretches: Sequence[Stretch]) -> Iterator[Stretch]:
    """Yield the lengths that are drops: they go up or down the wall."""
    return (s for s in stretches if s.is_upright and s.way in ("drop", "clipped"))
