"""A run unfolded: its pieces one after another along its length, as if all walls were one.

``along`` is the true distance along the run from its start. ``over`` is the distance sideways only,
which is what the strip is drawn by: where a run goes straight up, ``over`` stands still.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.containment.support_spacing import support_spacing
from asfitted.calculate.routes.containment_runs import run_of
from asfitted.geometry import distance3

if TYPE_CHECKING:
    from asfitted.calculate.containment.support_spacing import SupportSpacing
    from asfitted.calculate.results import CalculationResults, Section
    from asfitted.calculate.routes.containment_runs import Piece
    from asfitted.resolve.installation import Containment, Installation

UPRIGHT_MM = 1.0  # a piece that goes sideways by less than this is upright


@dataclass(frozen=True)
class Stretch:
    """A straight piece of a run: from and to along it, from and to sideways, height of its ends."""

    wall: str  # "" overhead or of a declared length
    along: tuple[float, float]
    over: tuple[float, float]
    up: tuple[float, float]  # above the floor of its room, mm

    @property
    def is_upright(self) -> bool:
        """Whether it goes straight up or down."""
        return self.over[1] - self.over[0] < UPRIGHT_MM


@dataclass(frozen=True)
class CutPiece:
    """A section of calculation with its place along the run, mm."""

    section: Section
    number: str  # "4" of T1/4
    along: tuple[float, float]


@dataclass(frozen=True)
class DevelopedRun:
    """A whole run, unfolded."""

    run: Containment
    stretches: tuple[Stretch, ...]
    pieces: tuple[CutPiece, ...]
    level: SupportSpacing | None = None  # spacing of its supports; None = in no table
    upright: SupportSpacing | None = None
    is_surveyed: bool = True  # False: a cable in it goes another way, not surveyed, on site

    @property
    def is_declared(self) -> bool:
        """Whether only its length is known, not its way."""
        return self.run.declared_length_m is not None

    @property
    def length_mm(self) -> float:
        """True length, mm."""
        return self.stretches[-1].along[1]

    @property
    def over_mm(self) -> float:
        """Length sideways, mm."""
        return self.stretches[-1].over[1]

    def place(self, along: float) -> tuple[float, float]:
        """Return how far sideways and how high the run is so far along it, mm."""
        for stretch in self.stretches:
            if along <= stretch.along[1] + 1e-6:
                length = stretch.along[1] - stretch.along[0]
                share = (along - stretch.along[0]) / length if length else 0.0
                return (
                    stretch.over[0] + (stretch.over[1] - stretch.over[0]) * share,
                    stretch.up[0] + (stretch.up[1] - stretch.up[0]) * share,
                )
        last = self.stretches[-1]
        return last.over[1], last.up[1]

    def piece_at(self, along: float) -> CutPiece:
        """Return the section so far along the run."""
        return next((p for p in self.pieces if along <= p.along[1] + 1e-6), self.pieces[-1])


def developed_runs(
    installation: Installation, results: CalculationResults
) -> tuple[DevelopedRun, ...]:
    """Return every run that is there and has sections, unfolded, in the order of the job."""
    by_run: dict[str, list[Section]] = {}
    for section in results.sections.values():
        by_run.setdefault(section.containment, []).append(section)
    found = []
    for tag, containment in installation.containment.items():
        run = run_of(containment)
        if run is None or tag not in by_run:
            continue
        stretches = _stretches(run.pieces, containment)
        pieces = _pieces(by_run[tag], containment, run.length_mm)
        level = support_spacing(containment, results)
        upright = support_spacing(containment, results, "vertical")
        is_surveyed = all(
            results.routes[cable].way_surveyed
            for piece in pieces
            for cable in piece.section.cables
            if cable in results.routes
        )
        made = DevelopedRun(containment, stretches, pieces, level, upright, is_surveyed)
        found.append(made)
    return tuple(found)


def _stretches(pieces: tuple[Piece, ...], run: Containment) -> tuple[Stretch, ...]:
    found: list[Stretch] = []
    over = 0.0
    for piece in pieces:
        a, b = piece.start, piece.end
        if run.declared_length_m is not None:
            level = -run.depth_mm if run.depth_mm else a.z
            across, up = piece.length_mm, (level, level)
        else:
            across, up = math.hypot(b.x - a.x, b.y - a.y), (a.z, b.z)
        along = (piece.from_mm, piece.to_mm)
        found.append(Stretch(piece.wall, along, (over, over + across), up))
        over += across
    return tuple(found)


def _pieces(sections: list[Section], run: Containment, length_mm: float) -> tuple[CutPiece, ...]:
    found: list[CutPiece] = []
    gone = 0.0
    for section in sections:
        is_declared = run.declared_length_m is not None
        length = length_mm if is_declared else distance3(section.start, section.end)
        number = section.ident.rsplit("/", 1)[-1]
        found.append(CutPiece(section, number, (gone, gone + length)))
        gone += length
    return tuple(found)
