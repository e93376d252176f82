"""Passages through walls and floors as ways of cables: two mouths, one in each room."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.calculate.routes.cable_ends import CableEnd
from asfitted.calculate.routes.containment_runs import Piece, PieceOnWall
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.routes.containment_runs import RunsByPlace
    from asfitted.resolve.installation import Installation, Passage, Position, Wall


@dataclass(frozen=True)
class PassageLine:
    """A passage with its mouths as ends of cables: the first at 0, the last at its length."""

    passage: Passage
    first: CableEnd
    last: CableEnd

    @property
    def tag(self) -> str:
        """Tag of the passage."""
        return self.passage.tag

    @property
    def length_mm(self) -> float:
        """What a cable needs from mouth to mouth, mm."""
        return self.passage.length_mm

    @property
    def mouths(self) -> tuple[tuple[float, CableEnd], tuple[float, CableEnd]]:
        """Distance along the passage and end, of both mouths."""
        return (0.0, self.first), (self.length_mm, self.last)

    def mouth(self, at_mm: float) -> CableEnd:
        """Return the mouth at a distance along the passage."""
        return self.first if at_mm <= 0 else self.last


def _mouth(tag: str, position: Position, walls: Mapping[str, Wall]) -> CableEnd:
    return CableEnd(
        tag=tag,
        wall=walls.get(position.wall),
        along_mm=position.along_mm,
        up_mm=position.up_mm,
        out_mm=0.0,
        outside=False,
        half_height_mm=0.0,
        end_of="",
        at=position.at,
    )


def passage_lines(installation: Installation) -> dict[str, PassageLine]:
    """Return every passage that is there to be used, in the order of the spec."""
    walls = installation.walls
    return {
        tag: PassageLine(
            passage, _mouth(tag, passage.start, walls), _mouth(tag, passage.end, walls)
        )
        for tag, passage in installation.passages.items()
        if passage.state is not State.REMOVED
    }


def with_mouths(places: RunsByPlace, lines: Mapping[str, PassageLine]) -> RunsByPlace:
    """Return the places of the runs together with the mouths, each a point of its wall."""
    on_wall = dict(places.on_wall)
    for line in lines.values():
        for at_mm, mouth in line.mouths:
            if mouth.wall is None:
                continue
            piece = Piece(line.tag, mouth.wall.name, mouth.at, mouth.at, at_mm, 0.0)
            along, up = mouth.along_mm, mouth.up_mm
            point = PieceOnWall(piece, along, up, along, up)
            on_wall[mouth.wall.name] = (*on_wall.get(mouth.wall.name, ()), point)
    return replace(places, on_wall=on_wall)
