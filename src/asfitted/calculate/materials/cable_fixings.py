"""Clips, cleats and ties of cables: greatest spacing from the tables, counted leg by leg."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from asfitted.calculate.containment.section_fill import cable_size
from asfitted.calculate.materials.item_words import enclosure_item, source_words
from asfitted.calculate.materials.items import Fixing
from asfitted.errors import InputOutOfRangeError, OutsideTableError
from asfitted.reference import cable_family, containment
from asfitted.reference.loader import table

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.calculate.materials.run_shape import RunShape, Straight
    from asfitted.calculate.results import CableRoute, CalculationResults, RouteLeg
    from asfitted.resolve.installation import Cable, Installation

BUNDLE_TIE_MM = 500  # ties round the cables of a basket every 300 to 500 mm: common practice


def cable_fixings(installation: Installation, results: CalculationResults) -> tuple[Fixing, ...]:
    """Return the clips and ties of every new cable, legs that follow each other alike as one."""
    found: list[Fixing] = []
    for cable in installation.cables.values():
        route = results.routes.get(cable.tag)
        if cable.state != "new" or route is None:
            continue
        overall = overall_mm(cable, results)
        if overall is not None:
            found += _of_cable(cable, route, overall, installation)
    return tuple(found)


def bundle_ties(shapes: Sequence[RunShape], results: CalculationResults) -> tuple[Fixing, ...]:
    """Return the ties round the cables in each new basket, where it carries any."""
    found: list[Fixing] = []
    for shape in shapes:
        run = shape.run
        is_used = any(s.cables for s in results.sections.values() if s.containment == run.tag)
        if run.kind != "wire basket" or not is_used:
            continue
        found += [_ties(run.tag, straight) for straight in shape.straights]
    return tuple(found)


def overall_mm(cable: Cable, results: CalculationResults) -> float | None:
    """Return the overall diameter of a cable, the longer axis of a flat one, None if not known."""
    figures = results.cables.get(cable.tag)
    if figures is not None:
        return figures.overall_mm
    try:
        return cable_size(cable, {}).overall_mm
    except (InputOutOfRangeError, OutsideTableError):
        return None


def clip_spacing_mm(cable: Cable, overall: float, *, upright: bool) -> tuple[int, str] | None:
    """Return the greatest spacing of clips, mm, and its source; None where none is tabulated."""
    armoured = cable_family.family(cable.family).is_armoured
    kind = "armoured cable" if armoured else "cable"
    try:
        found = containment.support_spacing(kind, overall, "vertical" if upright else "horizontal")
    except OutsideTableError:
        return None
    return round(found.value), source_words(found)


def _ties(tag: str, straight: Straight) -> Fixing:
    where = f"wall {straight.wall}" if straight.wall else "overhead"
    return Fixing(
        tag,
        where,
        "metal tie round the bundle",
        BUNDLE_TIE_MM,
        straight.length_mm,
        math.ceil(straight.length_mm / BUNDLE_TIE_MM) + 1,
        "every 300 to 500 mm (common practice)",
    )


def _of_cable(
    cable: Cable, route: CableRoute, overall: float, installation: Installation
) -> Iterator[Fixing]:
    for stretch in _stretches(route):
        leg, length = stretch[0], round(sum(part.length_mm for part in stretch))
        upright = abs(leg.end.z - leg.start.z) > 1.0 and leg.kind != "declared"
        found = _fixing_of(cable, leg, overall, upright, installation)
        if found is None or length <= 0:
            continue
        what, spacing, basis = found
        where = f"wall {leg.wall}" if leg.wall else "overhead"
        if leg.containment:
            where = f"on {leg.containment}, {where}"
        count = math.ceil(length / spacing) + 1
        yield Fixing(cable.tag, where, what, spacing, length, count, basis)


def _stretches(route: CableRoute) -> list[list[RouteLeg]]:
    """Return the legs, those of one run on one wall together."""
    found: list[list[RouteLeg]] = []
    for leg in route.legs:
        if found and leg.containment and _alike(found[-1][-1], leg):
            found[-1].append(leg)
        else:
            found.append([leg])
    return found


def _alike(first: RouteLeg, second: RouteLeg) -> bool:
    same = (first.containment, first.wall) == (second.containment, second.wall)
    return same and (first.start.z == first.end.z) == (second.start.z == second.end.z)


def _holder(cable: Cable) -> str:
    return "metal cleat" if cable_family.family(cable.family).is_armoured else "metal clip"


def _fixing_of(
    cable: Cable, leg: RouteLeg, overall: float, upright: bool, installation: Installation
) -> tuple[str, int, str] | None:
    """Return what holds a cable on a leg, at what spacing, and why; None where it lies inside."""
    size = f"{overall:.0f} mm cable"
    if leg.kind in ("through-wall", "declared", "passage") or enclosure_item(leg):
        return None
    if not leg.containment:
        spaced = clip_spacing_mm(cable, overall, upright=upright)
        return (f"{_holder(cable)} for {size}", *spaced) if spaced else None
    run = installation.containment[leg.containment]
    if run.kind not in ("perforated tray", "cable ladder"):
        return None  # basket: the bundle is tied; trunking and conduit hold it
    if upright:
        spaced = clip_spacing_mm(cable, overall, upright=True)
        return (f"{_holder(cable)} for {size}", *spaced) if spaced else None
    row = table("containment", "supports_swa_cleats").row(where="on horizontal tray")
    return "metal tie on tray", int(row["spacing"]), f"about every 1 m ({row['provenance']})"
