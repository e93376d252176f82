"""A run cut into sections: straight pieces on which the same cables lie."""

from __future__ import annotations

import itertools
from bisect import bisect_right
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.routes.route_graph import Span

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from asfitted.calculate.results import CableRoute, RouteLeg
    from asfitted.calculate.routes.containment_runs import Run
    from asfitted.geometry import Point3
    from asfitted.resolve.installation import Cable

_ON_PIECE_MM = 0.01


@dataclass(frozen=True)
class RunSection:
    """A section before anything is worked out for it; distances are along the run, mm."""

    ident: str
    run: str
    wall: str
    start: Point3
    end: Point3
    from_mm: float
    to_mm: float
    cables: tuple[str, ...]  # power then data, each in the order of the spec


@dataclass(frozen=True)
class CutRun:
    """The sections of one run in order, none of them left out."""

    run: str
    sections: tuple[RunSection, ...]

    def along(self, span: Span) -> Iterator[tuple[RunSection, bool]]:
        """Yield the sections of a span in the order they are passed, and whether forwards."""
        low, high = sorted((round(span.from_mm, 3), round(span.to_mm, 3)))
        starts = [section.from_mm for section in self.sections]
        begin = max(bisect_right(starts, low) - 1, 0)
        inside = []
        for section in self.sections[begin:]:
            if section.from_mm >= high:
                break
            if section.to_mm > low:
                inside.append(section)
        forwards = span.to_mm > span.from_mm
        yield from ((section, forwards) for section in (inside if forwards else inside[::-1]))


def cut_runs(
    runs: Mapping[str, Run],
    spans: Mapping[str, Sequence[Span]],
    cables: Mapping[str, Cable],
) -> dict[str, CutRun]:
    """Cut every run at its corners and wherever a cable joins or leaves.

    Args:
        runs: The runs.
        spans: Spans of runs by cable tag.
        cables: Cables by tag, in the order of the spec.
    """
    order = {tag: (cable.band != "power", n) for n, (tag, cable) in enumerate(cables.items())}
    by_run: dict[str, list[tuple[str, float, float]]] = {tag: [] for tag in runs}
    for cable, held in spans.items():
        for run, low, high in _merged(held):
            by_run[run].append((cable, low, high))
    return {tag: _cut(run, by_run[tag], order) for tag, run in runs.items()}


def _merged(spans: Iterable[Span]) -> list[tuple[str, float, float]]:
    """Join the spans of one cable that touch, so that each end of a span is a real change."""
    plain: list[tuple[str, float, float]] = []
    for span in spans:
        a, b = round(span.from_mm, 3), round(span.to_mm, 3)
        plain.append((span.run, min(a, b), max(a, b)))
    merged: list[tuple[str, float, float]] = []
    for run, low, high in sorted(plain):
        if merged and merged[-1][0] == run and low <= merged[-1][2]:
            merged[-1] = (run, merged[-1][1], max(high, merged[-1][2]))
        elif high > low:
            merged.append((run, low, high))
    return merged


def _cut(
    run: Run, held: Sequence[tuple[str, float, float]], order: Mapping[str, tuple[bool, int]]
) -> CutRun:
    corners = {0.0, *(round(piece.to_mm, 3) for piece in run.pieces)}
    joins: dict[float, list[str]] = {}
    leaves: dict[float, list[str]] = {}
    for cable, low, high in held:
        joins.setdefault(low, []).append(cable)
        leaves.setdefault(high, []).append(cable)
    cuts = sorted(corners | joins.keys() | leaves.keys())
    lying: set[str] = set()
    sections = []
    for number, (low, high) in enumerate(itertools.pairwise(cuts), start=1):
        lying.difference_update(leaves.get(low, ()))
        lying.update(joins.get(low, ()))
        piece = run.piece_at((low + high) / 2)
        sections.append(
            RunSection(
                ident=f"{run.tag}/{number}",
                run=run.tag,
                wall=piece.wall,
                start=piece.point_at(low),
                end=piece.point_at(high),
                from_mm=low,
                to_mm=high,
                cables=tuple(sorted(lying, key=lambda tag: order[tag])),
            )
        )
    return CutRun(run.tag, tuple(sections))


def spans_of(routes: Mapping[str, CableRoute], runs: Mapping[str, Run]) -> dict[str, list[Span]]:
    """Return the spans of runs that routes lie in, read back from their legs."""
    found: dict[str, list[Span]] = {}
    of_section: dict[str, Span] = {}  # many cables lie in one section
    for tag, route in routes.items():
        for leg in route.legs:
            if not leg.section:
                continue
            if leg.section not in of_section:
                of_section[leg.section] = _span_of(runs[leg.containment], leg)
            found.setdefault(tag, []).append(of_section[leg.section])
    return found


def _span_of(run: Run, leg: RouteLeg) -> Span:
    if run.is_declared:
        return Span(run.tag, 0.0, run.length_mm)
    return _span_between(run, leg.wall, leg.start, leg.end)


def _span_between(run: Run, wall: str, start: Point3, end: Point3) -> Span:
    for piece in run.pieces:
        if piece.wall != wall:
            continue
        a, b = _gone(piece.start, piece.end, start), _gone(piece.start, piece.end, end)
        if a is not None and b is not None:
            return Span(run.tag, piece.from_mm + a, piece.from_mm + b)
    raise ValueError(f"{start} to {end} does not lie on {run.tag}")


def _gone(start: Point3, end: Point3, place: Point3) -> float | None:
    """Return how far from ``start`` a place on a straight line is, or None when it is off it."""
    line = [b - a for a, b in zip(start, end, strict=True)]
    to = [p - a for a, p in zip(start, place, strict=True)]
    length = sum(part * part for part in line) ** 0.5
    gone = sum(a * b for a, b in zip(line, to, strict=True)) / length
    off = sum((t - part * gone / length) ** 2 for t, part in zip(to, line, strict=True)) ** 0.5
    on_it = off <= _ON_PIECE_MM and -_ON_PIECE_MM <= gone <= length + _ON_PIECE_MM
    return min(max(gone, 0.0), length) if on_it else None
