"""Where runs are cut across: at the fullest pieces of each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.containment.containment_kinds import kind_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.containment.developed_run import CutPiece, DevelopedRun

MOST_OF_A_RUN = 2
CUT_AT = 0.4  # of the length of the piece: a strip may be cut in its middle
ALIKE_PCT = 0.05  # fills nearer to each other than this are equally full


@dataclass(frozen=True)
class SectionPlace:
    """One cross-section: its number in the set, the run, the piece, and how far along it is cut."""

    number: int
    developed: DevelopedRun
    piece: CutPiece

    @property
    def along(self) -> float:
        """Distance from the start of the run, mm."""
        low, high = self.piece.along
        return low + CUT_AT * (high - low)


def section_places(runs: tuple[DevelopedRun, ...]) -> tuple[SectionPlace, ...]:
    """Return the cross-sections of a job, numbered in the order of its runs.

    A run with nothing in it, or whose room is not known, is not cut.
    """
    found: list[SectionPlace] = []
    for developed in runs:
        if kind_of(developed.run.kind).filling == "length":
            continue
        pieces = list(_fullest(developed))[:MOST_OF_A_RUN]
        for piece in sorted(pieces, key=lambda p: p.along):
            found.append(SectionPlace(len(found) + 1, developed, piece))
    return tuple(found)


def _fullest(developed: DevelopedRun) -> Iterator[CutPiece]:
    """Yield the fullest pieces that look different cut across, the longest of each."""
    filled = [p for p in developed.pieces if p.section.cables]
    if not filled:
        return
    most = max(p.section.fill_pct for p in filled)
    seen: set[tuple[float, ...]] = set()
    ranked = sorted(filled, key=lambda p: (-(p.along[1] - p.along[0]), p.along))
    for piece in ranked:
        is_fullest = most - piece.section.fill_pct <= ALIKE_PCT
        sizes = (float(piece.section.power_circuits), *piece.section.overall_mm)
        if is_fullest and sizes not in seen:
            seen.add(sizes)
            yield piece
