"""All that one elevation shows, gathered from the installation and the computed routes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.elevation.data_crossings import data_crossings
from asfitted.layout.elevation.drops_on_wall import clipped_corner_flags, stretches_on
from asfitted.layout.elevation.runs_on_wall import (
    corner_flags,
    crossings_on,
    declared_on,
    pieces_on,
)
from asfitted.layout.elevation.things_on_wall import things_away_from, things_on

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.drops_on_wall import Stretch
    from asfitted.layout.elevation.runs_on_wall import (
        CornerFlag,
        Crossing,
        DeclaredEnd,
        RunPiece,
    )
    from asfitted.layout.elevation.things_on_wall import Thing
    from asfitted.resolve.installation import Installation, Room, Wall


@dataclass(frozen=True)
class WallContent:
    """What one wall carries."""

    wall: Wall
    room: Room
    previous: str  # wall on the left
    pieces: tuple[RunPiece, ...]
    flags: tuple[CornerFlag, ...]
    crossings: tuple[Crossing, ...]
    declared: tuple[DeclaredEnd, ...]
    stretches: tuple[Stretch, ...]
    things: tuple[Thing, ...]
    away: tuple[str, ...]  # tags of things hung out in the room
    crossed: tuple[str, ...]  # where data crosses power, in words

    @property
    def is_empty(self) -> bool:
        """Whether the wall carries nothing, so that no elevation is drawn."""
        return not (self.pieces or self.crossings or self.declared or self.stretches or self.things)


def content_of(installation: Installation, results: CalculationResults, wall: Wall) -> WallContent:
    """Gather what a wall carries."""
    room = installation.rooms[wall.room]
    index = room.walls.index(wall.name)
    flags = (
        *corner_flags(installation, results, wall),
        *clipped_corner_flags(installation, results, wall),
    )
    pieces = pieces_on(installation, wall)
    stretches = stretches_on(installation, results, wall)
    return WallContent(
        wall=wall,
        room=room,
        previous=room.walls[index - 1],
        pieces=pieces,
        flags=flags,
        crossings=crossings_on(installation, results, wall),
        declared=declared_on(installation, wall),
        stretches=stretches,
        things=things_on(installation, wall),
        away=things_away_from(installation, wall),
        crossed=data_crossings(installation, pieces, stretches),
    )


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
