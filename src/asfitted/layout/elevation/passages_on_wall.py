"""Where cables leave the room of a wall: openings through the wall, through floor and ceiling."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.elevation.wall_view import WallPoint
from asfitted.layout.given_words import state_word
from asfitted.layout.surveyed_ways import all_told

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Installation, Passage, Position, Wall

STANDARD_MM = 100.0  # side of the sign of an opening whose size is not recorded


@dataclass(frozen=True)
class WallPassage:
    """One end of a passage on a wall: its place, and where the cables come out.

    ``to_wall`` and ``to_along_mm`` are the place of the other end, for the reference to its sheet.
    """

    tag: str
    through: str  # "wall", "floor"
    at: WallPoint
    width_mm: float
    height_mm: float
    to_room: str
    to_wall: str
    to_along_mm: float
    lines: tuple[str, ...]  # size, level and contents, as on the other side
    title: str


def passages_on(
    installation: Installation, results: CalculationResults, wall: Wall
) -> tuple[WallPassage, ...]:
    """Return the ends of passages on a wall, left to right."""
    found = [
        _end(installation, results, passage, here, there)
        for passage in installation.passages.values()
        for here, there in _ends_on(passage, wall)
    ]
    return tuple(sorted(found, key=lambda p: (p.at.along, p.at.up, p.tag)))


def _ends_on(passage: Passage, wall: Wall) -> Iterator[tuple[Position, Position]]:
    if passage.start.wall == wall.name:
        yield passage.start, passage.end
    if passage.end.wall == wall.name:
        yield passage.end, passage.start


def _end(
    installation: Installation,
    results: CalculationResults,
    passage: Passage,
    here: Position,
    there: Position,
) -> WallPassage:
    other = installation.walls.get(there.wall)
    size = _size(passage)
    state = state_word(passage.state)
    words = " ".join(w for w in (size, state) if w)
    lines = [words, f"C/L {round(here.up_mm):+d}"] if passage.through == "wall" else [words]
    cables = [tag for tag, route in results.routes.items() if passage.tag in route.passages]
    lines.append(_cables(all_told(cables, results)))
    if passage.fire_resistance_min:
        lines.append(f"{passage.fire_resistance_min:g} min, sealed: {passage.fire_stopping}")
    return WallPassage(
        passage.tag,
        passage.through,
        WallPoint(here.along_mm, here.up_mm, here.out_mm),
        passage.width_mm or STANDARD_MM,
        passage.height_mm or passage.width_mm or STANDARD_MM,
        other.room if other else "",
        there.wall,
        there.along_mm,
        tuple(line for line in lines if line),
        f"{passage.tag} passage through the {passage.through}, {' '.join(cables) or 'empty'}",
    )


def _size(passage: Passage) -> str:
    if passage.width_mm is None:
        return "size not recorded"
    height = f" × {passage.height_mm:g}" if passage.height_mm is not None else ""
    return f"{passage.width_mm:g}{height} opening"


def _cables(tags: Sequence[str]) -> str:
    if not tags:
        return "empty"
    return " ".join(tags) if len(tags) <= 4 else f"{len(tags)} cables"
