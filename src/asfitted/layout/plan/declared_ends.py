"""Where lengths that are only given in words leave their wall on the plan, and notes about them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.callout import Callout
from asfitted.layout.elevation.runs_on_wall import declared_on
from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.plan.plan_view import WALL_MM
from asfitted.layout.sheet_layout import Path, Stroke

if TYPE_CHECKING:
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.plan.plan_view import PlanView
    from asfitted.resolve.installation import Containment, Installation

W = widths_for("A3")
STEM_MM, HEAD_MM, HALF_MM = 3.0, 3.0, 1.6


def draw_declared_ends(
    drawing: Drawing, view: PlanView, installation: Installation
) -> list[Callout]:
    """Draw an arrow out of the wall where such a length starts, and return its callouts."""
    callouts = []
    for wall in installation.walls.values():
        for end in declared_on(installation, wall):
            face = -WALL_MM / view.scale
            foot = view.on_wall(wall, end.at.along, face)
            neck = view.on_wall(wall, end.at.along, face - STEM_MM)
            tip = view.on_wall(wall, end.at.along, face - STEM_MM - HEAD_MM)
            across = Point(-wall.inward.y * HALF_MM, -wall.inward.x * HALF_MM)
            sides = (neck.moved(across.x, across.y), neck.moved(-across.x, -across.y))
            head = Path((tip, *sides), Stroke(W.narrow), closed=True, fill="black")
            stem = polyline((foot.x, foot.y), (neck.x, neck.y), width_mm=W.wide)
            title = f"{end.run.tag} leaves wall {wall.name}"
            drawing.draw(f"plan-declared:{end.run.tag}", "flag", stem, head, title=title)
            xs, ys = [p.x for p in (tip, *sides)], [p.y for p in (tip, *sides)]
            box = Box(min(xs), min(ys), max(xs), max(ys))
            lines = (end.run.words, _length_words(end.run))
            to = (*lines, f"to {end.run.end_words}") if end.run.end_words else lines
            callouts.append(Callout(f"plan-declared-tag:{end.run.tag}", end.run.tag, to, box))
    return callouts


def declared_notes(installation: Installation) -> list[str]:
    """Return a note for each way that lengths were got: measured, declared or assumed."""
    found: dict[str, list[str]] = {}
    for run in installation.containment.values():
        if run.declared_length_m is not None:
            basis = str(run.declared_basis) if run.declared_basis else "declared"
            to = run.end_words or "not recorded"
            found.setdefault(basis, []).append(
                f"{run.tag} {run.words}, {_length_words(run)} to {to}"
            )
    return [f"Length {basis}, way not drawn: {'; '.join(words)}." for basis, words in found.items()]


def _length_words(run: Containment) -> str:
    """Return the length with the letter that says how it was got: "58 m (m)"."""
    basis = f" ({run.declared_basis[0]})" if run.declared_basis else ""
    return f"{(run.declared_length_m or 0):g} m{basis}"
