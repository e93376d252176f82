"""Passages on the plan: where cables go through a wall or a floor, with size and fire sealing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.callout import Callout
from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.plan.plan_view import WALL_MM
from asfitted.layout.sheet_layout import Path, Stroke

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.drawing import Drawing
    from asfitted.layout.plan.plan_view import PlanView
    from asfitted.resolve.installation import Installation, Passage, Position

W = widths_for("A3")
LEAST_MM = 2.4  # a passage is drawn at least so wide on paper
FLOOR_MM = 3.0  # side of the sign of a passage through a floor


def draw_passages(drawing: Drawing, view: PlanView, installation: Installation) -> list[Callout]:
    """Draw a crossed box where a passage goes through, and return its callouts, one for each."""
    callouts = []
    for passage in installation.passages.values():
        boxes = []
        for i, end in enumerate(_ends_here(passage, installation)):
            points = _outline(view, installation, passage, end)
            cross = (
                Path(points, Stroke(W.narrow), closed=True, fill="white"),
                polyline(points[0], points[2], width_mm=W.narrow),
                polyline(points[1], points[3], width_mm=W.narrow),
            )
            name = f"plan-passage:{passage.tag}:{i}"
            drawing.draw(name, "outline", *cross, title=f"passage {passage.tag}")
            boxes.append(_round(points))
        if boxes:
            callouts.append(
                Callout(
                    f"plan-passage-tag:{passage.tag}",
                    passage.tag,
                    passage_lines(passage),
                    boxes[0],
                    weight=2.0,
                )
            )
    return callouts


def passage_lines(passage: Passage) -> tuple[str, str]:
    """Return what is written under the tag of a passage: through what, size; fire sealing."""
    size = "size not recorded"
    if passage.width_mm is not None:
        size = f"{passage.width_mm:g}"
        if passage.height_mm is not None:
            size += f" × {passage.height_mm:g}"
    if passage.fire_resistance_min is None:
        fire = "fire resistance not recorded"
    elif passage.fire_resistance_min == 0:
        fire = "no fire resistance needed"
    else:
        fire = f"fire {passage.fire_resistance_min:g} min, sealed: {passage.fire_stopping}"
    return f"through {passage.through}, {size}", fire


def _ends_here(passage: Passage, installation: Installation) -> Iterator[Position]:
    """Yield the ends of a passage that lie in these rooms; of a wall passage one is enough."""
    ends = [p for p in (passage.start, passage.end) if p.wall in installation.walls]
    yield from ends[:1] if passage.through == "wall" else ends


def _outline(
    view: PlanView, installation: Installation, passage: Passage, end: Position
) -> tuple[Point, Point, Point, Point]:
    wall = installation.walls[end.wall]
    half = max((passage.width_mm or 0.0) / view.scale, LEAST_MM) / 2 * view.scale
    near, far = 0.0, -WALL_MM / view.scale
    if passage.through == "floor":
        half = FLOOR_MM / 2 * view.scale
        near, far = FLOOR_MM + 0.4, 0.4
    a, b = end.along_mm - half, end.along_mm + half
    return (
        view.on_wall(wall, a, near),
        view.on_wall(wall, b, near),
        view.on_wall(wall, b, far),
        view.on_wall(wall, a, far),
    )


def _round(points: tuple[Point, ...]) -> Box:
    xs, ys = [p.x for p in points], [p.y for p in points]
    return Box(min(xs), min(ys), max(xs), max(ys))
