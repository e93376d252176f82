"""All that one elevation shows, gathered from the installation and the computed routes."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from asfitted.layout.elevation.data_crossings import data_crossings
from asfitted.layout.elevation.drops_on_wall import clipped_corner_flags, stretches_on
from asfitted.layout.elevation.passages_on_wall import passages_on
from asfitted.layout.elevation.runs_on_wall import (
    corner_flags,
    crossings_on,
    declared_on,
    pieces_on,
)
from asfitted.layout.elevation.things_on_wall import things_away_from, things_on
from asfitted.layout.elevation.window import Edge, Window
from asfitted.layout.surveyed_ways import all_told

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.drops_on_wall import Stretch
    from asfitted.layout.elevation.passages_on_wall import WallPassage
    from asfitted.layout.elevation.runs_on_wall import (
        CornerFlag,
        Crossing,
        DeclaredEnd,
        RunPiece,
    )
    from asfitted.layout.elevation.things_on_wall import Thing
    from asfitted.resolve.installation import Installation, Opening, Room, Wall

Face = Literal["inside", "outside"]


@dataclass(frozen=True)
class WallContent:
    """What one view of a wall shows.

    ``key`` names the view: "elevation/A", "elevation/A/2" for its second part,
    "elevation/A/outside", "elevation/A/detail-a". On the outer face everything is given as seen
    from there: lengths count from the other end.
    """

    key: str
    face: Face
    window: Window
    wall: Wall
    room: Room
    pieces: tuple[RunPiece, ...]
    flags: tuple[CornerFlag, ...]
    crossings: tuple[Crossing, ...]
    declared: tuple[DeclaredEnd, ...]
    stretches: tuple[Stretch, ...]
    things: tuple[Thing, ...]
    passages: tuple[WallPassage, ...]
    away: tuple[str, ...]  # tags of things hung out in the room
    crossed: tuple[str, ...]  # where data crosses power, in words
    outside_key: str = ""  # the view of the outer face, when things are mounted there
    part: tuple[int, int] = (1, 1)  # which part of how many
    detail: str = ""  # letter of an enlarged detail

    @property
    def is_empty(self) -> bool:
        """Whether the wall carries nothing, so that no elevation is drawn."""
        return not (
            self.pieces
            or self.crossings
            or self.declared
            or self.stretches
            or self.things
            or self.passages
        )

    @property
    def letter(self) -> str:
        """Name of the wall within its room, as on its corners."""
        return self.wall.letter or self.wall.name

    @property
    def openings(self) -> tuple[tuple[int, Opening, Opening], ...]:
        """Doors and windows that are seen: number on the wall, true opening, part that is shown."""
        found = []
        for number, opening in enumerate(self.wall.openings):
            seen = _seen_of(opening, self.window)
            if seen is not None:
                found.append((number, opening, seen))
        return tuple(found)


def _seen_of(opening: Opening, window: Window) -> Opening | None:
    """Return what a window shows of a door or window of the wall."""
    left = max(opening.from_mm, window.from_mm)
    right = min(opening.from_mm + opening.width_mm, window.to_mm)
    foot = max(opening.sill_mm, window.low_mm)
    head = min(opening.sill_mm + opening.height_mm, window.high_mm)
    if right - left < 1.0 or head - foot < 1.0:
        return None
    return replace(
        opening, from_mm=left, width_mm=right - left, sill_mm=foot, height_mm=head - foot
    )


def content_of(installation: Installation, results: CalculationResults, wall: Wall) -> WallContent:
    """Gather what a whole wall carries, as seen from inside."""
    room = installation.rooms[wall.room]
    index = room.walls.index(wall.name)
    before = installation.walls[room.walls[index - 1]]
    after = installation.walls[wall.next_wall]
    flags = (
        *corner_flags(installation, results, wall),
        *clipped_corner_flags(installation, results, wall),
    )
    pieces = pieces_on(installation, wall)
    stretches = stretches_on(installation, results, wall)
    things = things_on(installation, wall)
    has_outside = any(t.is_outside for t in things)
    key = f"elevation/{wall.name}"
    return WallContent(
        key=key,
        face="inside",
        window=Window(
            0.0,
            wall.length_mm,
            0.0,
            wall.height_mm,
            Edge("corner", shown_name(before), is_outer=_is_outer(before, wall)),
            Edge("corner", shown_name(after), is_outer=_is_outer(wall, after)),
        ),
        wall=wall,
        room=room,
        pieces=pieces,
        flags=tuple(replace(f, cables=all_told(f.cables, results)) for f in flags),
        crossings=tuple(
            replace(c, cables=all_told(c.cables, results))
            for c in crossings_on(installation, results, wall)
        ),
        declared=declared_on(installation, wall),
        stretches=stretches,
        things=things,
        passages=passages_on(installation, results, wall),
        away=things_away_from(installation, wall),
        crossed=data_crossings(installation, pieces, stretches),
        outside_key=f"{key}/outside" if has_outside else "",
    )


def shown_name(wall: Wall) -> str:
    """Return the name of a wall as it stands at a corner of its room."""
    return wall.letter or wall.name


def _is_outer(first: Wall, second: Wall) -> bool:
    """Tell whether a room turns to the left from one wall to the next: an outer corner."""
    a, b = first.direction, second.direction
    return a.x * b.y - a.y * b.x > 0.5


def walls_with_content(
    installation: Installation, results: CalculationResults
) -> tuple[WallContent, ...]:
    """Return the content of every wall that carries anything, room by room, clockwise."""
    found = []
    for room in installation.rooms.values():
        for name in room.walls:
            content = content_of(installation, results, installation.walls[name])
            if not content.is_empty:
                found.append(content)
    return tuple(found)
