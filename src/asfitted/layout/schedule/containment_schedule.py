"""The containment schedule: each run with size, level, contents, fill and distance from data."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.figures import metres
from asfitted.layout.given_words import NOT_RECORDED, state_before
from asfitted.layout.schedule.words import NOT_CHECKED, figure
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from asfitted.calculate.results import ContainmentResult
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Containment

COLUMNS = (
    Column("Run", wraps=False),
    Column("What"),
    Column("For"),
    Column("Level mm", align="end"),
    Column("Length", align="end", wraps=False),
    Column("Fullest piece: cables"),
    Column("Fill %", align="end", wraps=False),
    Column("Limit %", align="end", wraps=False),
    Column("Least width mm", align="end"),
    Column("Cables kg/m", align="end"),
    Column("Clear of the other band mm"),
)


def containment_schedule(model: Model) -> Table:
    """Return one row for each run, in order of the spec."""
    runs = list(model.installation.containment.values())
    rows = tuple(_row(run, model) for run in runs)
    return Table(COLUMNS, rows, tuple(run.tag for run in runs))


def _row(run: Containment, model: Model) -> tuple[str, ...]:
    result = model.results.containment.get(run.tag)
    return (
        run.tag,
        state_before(run.state) + run.words,
        " and ".join(run.bands),
        _level(run),
        _length(run, result),
        _contents(model, result),
        figure(result.fill_pct if result and result.fullest else None, 0, missing="–"),
        figure(result.limit_pct if result else None, 0, missing="–"),
        figure(result.width_to_order_mm if result else None, 0, missing="–"),
        figure(result.mass_kg_m if result and result.mass_kg_m else None, 1, missing="n/k"),
        _clearance(result),
    )


def _level(run: Containment) -> str:
    """Return the level, from and to for a run that goes up or down."""
    heights = sorted({round(point.z) for point in run.path})
    if run.declared_length_m is not None:
        return NOT_RECORDED if run.depth_mm is None else f"{run.depth_mm:.0f} deep"
    if len(heights) > 1:
        return f"+{heights[0]} to +{heights[-1]}"
    return f"{run.level_of} +{run.level_mm:.0f}"


def _length(run: Containment, result: ContainmentResult | None) -> str:
    if run.declared_length_m is not None:
        basis = f" ({run.declared_basis[0]})" if run.declared_basis else ""
        return metres(run.declared_length_m) + basis
    return NOT_CHECKED if result is None else metres(result.length_m)


def _contents(model: Model, result: ContainmentResult | None) -> str:
    if result is None or not result.fullest:
        return "nothing"
    return " ".join(model.results.sections[result.fullest].cables)


def _clearance(result: ContainmentResult | None) -> str:
    if result is None or result.separation_mm is None or result.separation_needed_mm is None:
        return "–"
    found, need = result.separation_mm, result.separation_needed_mm
    return f"{found:.0f} from {result.separation_from}, needs {need:.0f}"
