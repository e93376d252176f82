"""The sections of every run with the cables in them, and each run as a whole."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.calculate.containment.run_sections import cut_runs, spans_of
from asfitted.calculate.containment.section_fill import (
    CableSize,
    cable_size,
    fill_of,
    width_needed_mm,
    width_to_order_mm,
)
from asfitted.calculate.containment.separation import separations
from asfitted.calculate.results import ContainmentResult, Section
from asfitted.calculate.routes.cable_routes import find_paths
from asfitted.calculate.routes.containment_runs import runs_of
from asfitted.calculate.working import Step
from asfitted.reference import containment as stock_tables

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.containment.run_sections import RunSection
    from asfitted.calculate.containment.separation import Separation
    from asfitted.calculate.results import CableRoute
    from asfitted.calculate.routes.containment_runs import Run
    from asfitted.resolve.installation import Installation


@dataclass(frozen=True)
class RouteResult:
    """Ways of all cables, sections of all runs and each run as a whole, by tag or ident."""

    routes: Mapping[str, CableRoute]
    sections: Mapping[str, Section]
    containment: Mapping[str, ContainmentResult]


def find_routes(
    installation: Installation, sizes: Mapping[str, float] | None = None
) -> RouteResult:
    """Return ways, sections and fill of a job whose cable sizes are all known.

    Args:
        installation: The job.
        sizes: Chosen cross-sections by cable tag, mm2, for cables whose own is open.

    Raises:
        InputOutOfRangeError: a cable in containment has no size yet.
    """
    routes = find_paths(installation)
    sections, containment = fill_sections(installation, routes, sizes or {})
    return RouteResult(routes, sections, containment)


def fill_sections(
    installation: Installation, paths: Mapping[str, CableRoute], sizes: Mapping[str, float]
) -> tuple[Mapping[str, Section], Mapping[str, ContainmentResult]]:
    """Return the sections of all runs, empty ones too, and each run as a whole.

    Args:
        installation: The job.
        paths: What ``find_paths`` gave.
        sizes: Cross-sections by cable tag, mm2; the spec's own where a cable is left out.

    Raises:
        InputOutOfRangeError: a cable in containment has no size yet.
        OutsideTableError: a cable is not in the dimension tables.
    """
    runs = runs_of(installation)
    spans = spans_of(paths, runs)
    cut = cut_runs(runs, spans, installation.cables)
    taken = {
        tag: cable_size(installation.cables[tag], sizes)
        for tag, route in paths.items()
        if route.legs
    }
    sections = {
        piece.ident: _section(installation, runs[piece.run], piece, taken)
        for run in cut.values()
        for piece in run.sections
    }
    apart = separations(installation, paths, runs, sections, taken)
    results = {
        tag: _as_a_whole(
            run, [sections[piece.ident] for piece in cut[tag].sections], taken, apart.get(tag)
        )
        for tag, run in runs.items()
    }
    return MappingProxyType(sections), MappingProxyType(results)


def _section(
    installation: Installation, run: Run, piece: RunSection, taken: Mapping[str, CableSize]
) -> Section:
    lying = [taken[tag] for tag in piece.cables]
    power = [tag for tag in piece.cables if installation.cables[tag].band == "power"]
    fill = fill_of(run.containment, lying, only_data=not power)
    return Section(
        ident=piece.ident,
        containment=piece.run,
        wall=piece.wall,
        start=piece.start,
        end=piece.end,
        cables=piece.cables,
        overall_mm=tuple(size.overall_mm for size in lying),
        power_circuits=len(power),
        used_mm=fill.used_mm,
        used_area_mm2=fill.used_area_mm2,
        fill_pct=fill.fill_pct,
        limit_pct=fill.limit_pct,
        mass_kg_m=sum((size.mass_kg_m or 0.0 for size in lying), 0.0),
    )


def _as_a_whole(
    run: Run,
    sections: Sequence[Section],
    taken: Mapping[str, CableSize],
    apart: Separation | None,
) -> ContainmentResult:
    fullest = max(sections, key=lambda section: section.fill_pct)
    is_empty = not fullest.cables
    needed = order = None
    if fullest.used_mm is not None and not is_empty:
        needed = width_needed_mm(fullest.overall_mm)
        order = width_to_order_mm(run.containment.kind, needed)
    result = ContainmentResult(
        tag=run.tag,
        length_m=round(run.length_mm / 1000, 3),
        fullest="" if is_empty else fullest.ident,
        fill_pct=fullest.fill_pct,
        limit_pct=fullest.limit_pct,
        width_needed_mm=needed,
        width_to_order_mm=order,
        mass_kg_m=max(section.mass_kg_m for section in sections),
        separation_needed_mm=None,
        separation_mm=None,
        separation_from="",
        steps=() if is_empty else _steps(fullest, needed, taken),
    )
    if apart is None:
        return result
    return replace(
        result,
        separation_needed_mm=apart.needed_mm,
        separation_mm=apart.clear_mm,
        separation_from=apart.other,
        steps=(*result.steps, *apart.steps),
    )


def _steps(
    section: Section, needed_mm: float | None, taken: Mapping[str, CableSize]
) -> tuple[Step, ...]:
    if section.used_mm is not None and needed_mm is not None:
        return (*_width_steps(section, section.used_mm, needed_mm), _mass_step(section, taken))
    if section.used_area_mm2 is None:
        return ()
    area = Step(
        "A",
        f"cable area in {section.ident}",
        "sum of cable areas",
        " + ".join(f"{taken[tag].area_mm2:.0f}" for tag in section.cables),
        section.used_area_mm2,
        "mm²",
        "dimension tables",
    )
    return (area, _mass_step(section, taken))


def _width_steps(section: Section, used_mm: float, needed_mm: float) -> tuple[Step, ...]:
    edge, spare = stock_tables.edge_allowance_mm(), stock_tables.spare_fraction()
    figures = " + ".join(f"{overall:g}" for overall in section.overall_mm)
    used = Step(
        "w",
        f"width used in {section.ident}",
        "sum of diameters + 2 edges",
        f"{figures} + 2 × {edge.value:g}",
        used_mm,
        "mm",
        edge.provenance,
    )
    needed = Step(
        "W",
        "width that keeps the spare free",
        "w / (1 - spare)",
        f"{used_mm:.1f} / (1 - {spare.value:g})",
        needed_mm,
        "mm",
        spare.provenance,
    )
    return used, needed


def _mass_step(section: Section, taken: Mapping[str, CableSize]) -> Step:
    """Return the working of the mass; cables without a tabulated mass are named, not guessed."""
    masses = {tag: taken[tag].mass_kg_m for tag in section.cables}
    unknown = [tag for tag, mass in masses.items() if mass is None]
    words = f"mass of cables in {section.ident}"
    if unknown:
        words += f"; no mass is known for {', '.join(unknown)}"
    known = [mass for mass in masses.values() if mass is not None]
    return Step(
        "m",
        words,
        "sum of masses",
        " + ".join(f"{mass:.3f}" for mass in known) or "0",
        section.mass_kg_m,
        "kg/m",
        "dimension tables; where they give no mass: copper, and the rest as solid plastics",
    )
