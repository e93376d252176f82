"""Legend of a plan: every symbol and line on it, and nothing else."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.legend import LineSample, lay_out_legend
from asfitted.layout.plan.camera_views import camera_reaches
from asfitted.layout.plan.plan_runs import is_level_somewhere
from asfitted.layout.plan.plan_things import GREAT, GREAT_MM, SIZE_MM, plan_things, size_of
from asfitted.layout.plan.plan_view import WALL_MM

if TYPE_CHECKING:
    from asfitted.geometry import Point
    from asfitted.layout.legend import Legend
    from asfitted.layout.sheet_model import Model


def legend_of(model: Model, at: Point, width_mm: float, columns: int = 2) -> Legend:
    """Return the legend of what the plan of a job, or of a part of it, uses."""
    installation = model.installation
    things = plan_things(installation, model.symbols)
    wall = f"wall: drawn {WALL_MM:g} mm thick, thickness not recorded"
    lines = [LineSample(wall, 0.5, double=True)]
    if any(is_level_somewhere(run) for run in installation.containment.values()):
        lines.append(LineSample("containment from above", 0.5, double=True))
    if any(t.looks is not None and camera_reaches(model, t.tag) for t in things):
        lines.append(LineSample("what a camera sees, to scale", 0.25, "long_dash_double_dot"))
        lines.append(LineSample("end of a class of picture detail, see the notes", 0.25, "dashed"))
    if any(w.openings for w in installation.walls.values()):
        lines.append(LineSample("door or other opening", 0.25, "dashed"))
    used = sorted({thing.symbol for thing in things if thing.symbol})
    return lay_out_legend(
        at=at,
        width_mm=width_mm,
        columns=columns,
        symbols=used,
        catalogue=model.symbols,
        lines=lines,
        abbreviations=(
            ("FFL", "finished floor level"),
            ("T/O, U/S, C/L", "top of, underside of, centre line of"),
        ),
        size_mm=GREAT_MM if any(name in GREAT for name in used) else SIZE_MM,
        sizes_mm={name: size_of(name) for name in used},
    )
