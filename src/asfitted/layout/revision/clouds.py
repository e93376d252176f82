"""Clouds: boxes round what changed, widened until their outline meets no word and no sign."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.sheet_layout import Path, Stroke

if TYPE_CHECKING:
    from collections.abc import Sequence

ARC_POINTS = 7
CLEAR_MM = 0.35  # between the outline and a word
JOIN_MM = 3.0  # clouds nearer than this are one
MOST_ROUNDS = 200


@dataclass(frozen=True)
class Scallop:
    """How a cloud is drawn: its distance from what it encloses, chord and radius of its arcs, mm.

    Radii of 4 to 6 mm are common practice; shallower arcs serve between the rows of a table.
    """

    margin_mm: float
    chord_mm: float
    radius_mm: float

    @property
    def rise_mm(self) -> float:
        """How far an arc stands out from its chord, mm."""
        return self.radius_mm - math.sqrt(self.radius_mm**2 - self.chord_mm**2 / 4)

    @property
    def reach_mm(self) -> float:
        """How far the outline stands out from what it encloses, mm."""
        return self.margin_mm + self.rise_mm


SCALLOPS = (
    Scallop(1.8, 6.6, 4.0),
    Scallop(1.2, 6.0, 4.0),
    Scallop(0.8, 5.2, 4.4),
    Scallop(0.45, 4.6, 5.0),
    Scallop(0.4, 3.6, 6.0),
)


ROUND = SCALLOPS[2]  # flatter than this is for narrow places
NEIGHBOURS = 3
TAKEN_IN_MM2 = 260.0


@dataclass(frozen=True)
class Cloud:
    """One cloud: the box that it encloses and the way it is drawn."""

    core: Box
    scallop: Scallop

    @property
    def outer(self) -> Box:
        """The box round the whole cloud, mm."""
        return self.core.grown(self.scallop.reach_mm)


def clouds_round(cores: Sequence[Box], solid: Sequence[Box], limits: Box) -> tuple[Cloud, ...]:
    """Return clouds round boxes so that no outline meets a word or sign, or another cloud.

    Args:
        cores: boxes of what changed, mm.
        solid: boxes of all words and signs of the sheet, mm.
        limits: where an outline may run; what lies outside is another cloud's affair.
    """
    clouds = [_cloud(core, solid, limits) for core in cores]
    for _ in range(MOST_ROUNDS):
        pair = _meeting(clouds)
        if pair is None:
            break
        first, second = pair
        joined = _cloud(clouds[first].core.joined(clouds[second].core), solid, limits)
        clouds = [c for i, c in enumerate(clouds) if i not in pair] + [joined]
    return tuple(sorted(clouds, key=lambda c: (c.core.y0, c.core.x0)))


def _meeting(clouds: Sequence[Cloud]) -> tuple[int, int] | None:
    for i, one in enumerate(clouds):
        near = one.outer.grown(JOIN_MM if one.scallop.margin_mm > 0.7 else 0.0)
        for j in range(i + 1, len(clouds)):
            if near.meets(clouds[j].outer):
                return i, j
    return None


def _cloud(core: Box, solid: Sequence[Box], limits: Box) -> Cloud:
    """Return the roundest cloud that meets nothing; take in what even the flattest would cut.

    A few words close by, such as the tag under a thing, are taken in for a rounder outline.
    """
    for _ in range(NEIGHBOURS):
        near = _cut(core, ROUND, solid)
        wider = core
        for box in near:
            wider = wider.joined(box)
        if not near or _area(wider) > _area(core) + TAKEN_IN_MM2:
            break
        core = wider
    for _ in range(MOST_ROUNDS):
        for scallop in SCALLOPS:
            if limits.holds(core.grown(scallop.reach_mm)) and not _cut(core, scallop, solid):
                return Cloud(core, scallop)
        cut = _cut(core, SCALLOPS[-1], solid)
        if not cut:
            break
        for box in cut:
            core = core.joined(box)
    return Cloud(core, SCALLOPS[-1])


def _area(box: Box) -> float:
    return box.width * box.height


def _cut(core: Box, scallop: Scallop, solid: Sequence[Box]) -> list[Box]:
    """Return the words and signs that the outline of a cloud would meet."""
    outer = core.grown(scallop.reach_mm + CLEAR_MM)
    inner = core.grown(scallop.margin_mm - CLEAR_MM)
    return [box for box in solid if outer.meets(box) and not inner.holds(box)]


def outline(cloud: Cloud, width_mm: float) -> Path:
    """Return the cloud as one closed line: a chain of arcs that stand out from its box."""
    box = cloud.core.grown(cloud.scallop.margin_mm)
    corners = (
        Point(box.x0, box.y0),
        Point(box.x1, box.y0),
        Point(box.x1, box.y1),
        Point(box.x0, box.y1),
    )
    points: list[Point] = []
    for i, start in enumerate(corners):
        points += _chain(start, corners[(i + 1) % 4], cloud.scallop)
    return Path(tuple(points), Stroke(width_mm), closed=True)


def _chain(start: Point, end: Point, scallop: Scallop) -> list[Point]:
    """Return arcs from one corner to the next, clockwise on the sheet, without the last point."""
    length = math.dist(start, end)
    count = max(1, round(length / scallop.chord_mm))
    along = ((end.x - start.x) / length, (end.y - start.y) / length)
    out = (along[1], -along[0])
    chord = length / count
    # a side shorter or longer than whole chords keeps the rise, so that nothing is met
    rise = min(scallop.rise_mm, chord / 2)
    radius = rise / 2 + chord**2 / (8 * rise)
    half = math.asin(min(1.0, chord / (2 * radius)))
    points = []
    for n in range(count):
        for step in range(ARC_POINTS):
            angle = -half + 2 * half * step / ARC_POINTS
            s = n * chord + chord / 2 + radius * math.sin(angle)
            h = radius * math.cos(angle) - (radius - rise)
            points.append(
                Point(start.x + along[0] * s + out[0] * h, start.y + along[1] * s + out[1] * h)
            )
    return points
