"""Containment from above: two edges beside the wall, one run beside the other, crossings true."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.callout import Callout
from asfitted.layout.elevation.removed import hatching
from asfitted.layout.elevation.runs_on_wall import level_words, wall_of
from asfitted.layout.given_words import state_before
from asfitted.layout.linework import widths_for
from asfitted.layout.sheet_layout import Path, Stroke

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.geometry import Point3
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.plan.plan_view import PlanView
    from asfitted.resolve.installation import Containment, Installation

W = widths_for("A3")
LEAST_MM = 1.25
LEVEL_MM = 1.0  # a piece that moves less than this on plan is upright
BETWEEN_MM = 1.0
BESIDE_INK, OVER_INK = 0.5, 8.0  # what a leader pays to cross a run beside a wall, overhead
SQUARE_MM = 0.1
FIRST_MM = 0.9  # from the inner face to the first run


@dataclass(frozen=True)
class Lane:
    """Where a run lies beside the walls it follows: from and to, mm of paper off the inner face."""

    near: float
    far: float


def lanes_of(view: PlanView, installation: Installation) -> dict[str, Lane]:
    """Return a lane for each run; runs that share a wall lie side by side, in their order."""
    lanes: dict[str, Lane] = {}
    for tag, run in installation.containment.items():
        if not is_level_somewhere(run):
            continue
        width = max(run.width_mm / view.scale, LEAST_MM)
        others = [
            lanes[o]
            for o in lanes
            if set(installation.containment[o].walls) & set(run.walls) - {""}
        ]
        near = max((lane.far + BETWEEN_MM for lane in others), default=FIRST_MM)
        lanes[tag] = Lane(near, near + width)
    return lanes


def is_level_somewhere(run: Containment) -> bool:
    """Tell whether any piece of a run goes sideways, so that a plan shows it."""
    return any(abs(a.x - b.x) + abs(a.y - b.y) > LEVEL_MM for a, b in pairwise(run.path))


@dataclass(frozen=True)
class RunBoxes:
    """Boxes on the sheet that runs fill, mm: those beside walls, and those overhead."""

    beside: tuple[Box, ...]
    overhead: tuple[Box, ...]


def run_boxes(view: PlanView, installation: Installation, lanes: dict[str, Lane]) -> RunBoxes:
    """Return the boxes that runs fill."""
    beside: list[Box] = []
    overhead: list[Box] = []
    for tag, lane in lanes.items():
        run = installation.containment[tag]
        for quad, _, is_overhead in _pieces(view, installation, run, lane):
            (overhead if is_overhead else beside).append(_box_round(quad))
    return RunBoxes(tuple(beside), tuple(overhead))


def upright_runs(installation: Installation) -> tuple[str, ...]:
    """Return the tags of runs that only go up and down: a plan does not show them."""
    return tuple(
        tag
        for tag, run in installation.containment.items()
        if len(run.path) > 1 and not is_level_somewhere(run)
    )


def draw_runs(
    drawing: Drawing,
    view: PlanView,
    installation: Installation,
    lanes: dict[str, Lane],
    edge: Box,
) -> list[Callout]:
    """Draw every run from above and return its callouts: tag, size, level.

    ``edge`` is where the plan is cut off: a callout points at what is left of its run.
    """
    callouts = []
    for tag, run in installation.containment.items():
        lane = lanes.get(tag)
        if lane is None:
            continue
        pieces = _pieces(view, installation, run, lane)
        for i, (quad, _, is_overhead) in enumerate(pieces):
            width = W.narrow if run.state != "new" else W.wide
            dash = "dashed" if run.state == "removed" else "continuous"
            edges = (
                Path(quad, None, closed=True, fill="tint"),
                Path((quad[0], quad[1]), Stroke(width, dash)),  # type: ignore[arg-type]
                Path((quad[3], quad[2]), Stroke(width, dash)),  # type: ignore[arg-type]
            )
            ends = ((0, 3),) * (i == 0) + ((1, 2),) * (i + 1 == len(pieces))
            caps = (Path((quad[a], quad[b]), Stroke(W.narrow)) for a, b in ends)
            title = f"{tag} {state_before(run.state)}{run.words}"
            hatch = (
                hatching(_box_round(quad)) if run.state == "removed" and _is_square(quad) else ()
            )
            drawing.draw(f"plan-run:{tag}:{i}", "outline", *edges, *caps, *hatch, title=title)
            drawing.room.take_ink(_box_round(quad), OVER_INK if is_overhead else BESIDE_INK)
        seen = [box for quad, _, _ in pieces if (box := _shared(_box_round(quad), edge))]
        if seen:
            longest = max(seen, key=lambda box: max(box.width, box.height))
            callouts.append(_callout(run, longest))
    return callouts


def _shared(box: Box, edge: Box) -> Box | None:
    """Return what of a box lies inside an edge, or None."""
    if not box.meets(edge):
        return None
    return Box(
        max(box.x0, edge.x0), max(box.y0, edge.y0), min(box.x1, edge.x1), min(box.y1, edge.y1)
    )


def _callout(run: Containment, box: Box) -> Callout:
    lines = (f"{state_before(run.state)}{run.words}", level_words(run, run.level_mm))
    return Callout(f"plan-run-tag:{run.tag}", run.tag, lines, box)


def _is_square(quad: Sequence[Point]) -> bool:
    """Tell whether a piece runs along the edges of the sheet, so that its box is its outline."""
    a, b = quad[:2]
    return min(abs(a.x - b.x), abs(a.y - b.y)) < SQUARE_MM


def _box_round(points: Sequence[Point]) -> Box:
    xs, ys = [p.x for p in points], [p.y for p in points]
    return Box(min(xs), min(ys), max(xs), max(ys))


def _pieces(
    view: PlanView,
    installation: Installation,
    run: Containment,
    lane: Lane,
) -> list[tuple[tuple[Point, Point, Point, Point], float, bool]]:
    """Return of each level piece its corners on the sheet, its length, whether it is overhead."""
    found = []
    flat = [
        (a, b, name)
        for (a, b), name in zip(pairwise(run.path), run.walls, strict=False)
        if abs(a.x - b.x) + abs(a.y - b.y) > LEVEL_MM
    ]
    for i, (a, b, name) in enumerate(flat):
        before = flat[i - 1][2] if i else ""
        after = flat[i + 1][2] if i + 1 < len(flat) else ""
        if name:
            quad = _along_wall(
                view, installation, (a, b), name=name, beside=(before, after), lane=lane
            )
        else:
            quad = _overhead(view, installation, run, (a, b), (before, after))
        length = abs(quad[0].x - quad[1].x) + abs(quad[0].y - quad[1].y)
        found.append((quad, length, not name))
    return found


def _along_wall(
    view: PlanView,
    installation: Installation,
    ends: tuple[Point3, Point3],
    *,
    name: str,
    beside: tuple[str, str],
    lane: Lane,
) -> tuple[Point, Point, Point, Point]:
    """Return a piece beside a wall, mitred where it turns on to the next wall."""
    wall = installation.walls[name]

    def corner(end: Point3, neighbour: str, depth: float) -> Point:
        p = view.at(end.x, end.y).moved(wall.inward.x * depth, -wall.inward.y * depth)
        if neighbour in ("", name):
            return p
        other = installation.walls[neighbour]
        return p.moved(other.inward.x * depth, -other.inward.y * depth)

    a, b = ends
    return (
        corner(a, beside[0], lane.near),
        corner(b, beside[1], lane.near),
        corner(b, beside[1], lane.far),
        corner(a, beside[0], lane.far),
    )


def _overhead(
    view: PlanView,
    installation: Installation,
    run: Containment,
    ends: tuple[Point3, Point3],
    beside: tuple[str, str],
) -> tuple[Point, Point, Point, Point]:
    """Return a crossing at its true place and width."""
    a, b = ends
    p, q = view.at(a.x, a.y), view.at(b.x, b.y)
    half = max(run.width_mm / view.scale, LEAST_MM) / 2
    for place, name, is_first in ((a, beside[0], True), (b, beside[1], False)):
        wall = installation.walls.get(wall_of(installation, place, name))
        if wall is not None:
            shift = (wall.inward.x * FIRST_MM, -wall.inward.y * FIRST_MM)
            p, q = (p.moved(*shift), q) if is_first else (p, q.moved(*shift))
    length = ((q.x - p.x) ** 2 + (q.y - p.y) ** 2) ** 0.5 or 1.0
    nx, ny = -(q.y - p.y) / length * half, (q.x - p.x) / length * half
    return (p.moved(nx, ny), q.moved(nx, ny), q.moved(-nx, -ny), p.moved(-nx, -ny))
