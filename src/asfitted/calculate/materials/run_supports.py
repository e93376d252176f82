"""Supports of runs and of conduit outside them, at the spacing that the load or a table allows."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from asfitted.calculate.containment.support_spacing import LAID_IN
from asfitted.calculate.materials.item_words import source_words
from asfitted.calculate.materials.items import Fixing
from asfitted.errors import OutsideTableError
from asfitted.reference import containment
from asfitted.reference.loader import table

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.calculate.materials.run_shape import RunShape, Straight
    from asfitted.calculate.materials.wanted_pieces import EnclosedLine
    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Containment, Installation

LEAST_SPAN_MM = 500
STEP_MM = 50


def supports_along(length_mm: int, spacing_mm: int, end_mm: int) -> int:
    """Return how many supports a straight needs: one within ``end_mm`` of each end.

    Example:
        >>> supports_along(4400, 1500, 300), supports_along(500, 1500, 300)
        (4, 1)
    """
    between = length_mm - 2 * end_mm
    return 1 if between <= 0 else math.ceil(between / spacing_mm) + 1


def tray_span_mm(mass_kg_m: float, planning_limit_kg_m: float, normal_mm: int) -> int:
    """Return the spacing of tray supports for a load, mm, in steps of 50 mm.

    Up to the planning limit the normal spacing; above it closer, so that the bending moment
    (load times span squared) stays the same.

    Args:
        mass_kg_m: Load with its reserve, kg/m.
        planning_limit_kg_m: Load up to which the normal spacing serves, kg/m.
        normal_mm: Normal spacing, mm.

    Example:
        >>> tray_span_mm(20, 25, 1500), tray_span_mm(100, 25, 1500)
        (1500, 750)
    """
    if mass_kg_m <= planning_limit_kg_m:
        return normal_mm
    span = normal_mm * math.sqrt(planning_limit_kg_m / mass_kg_m)
    return max(int(span // STEP_MM) * STEP_MM, LEAST_SPAN_MM)


def run_supports(
    installation: Installation, results: CalculationResults, shapes: Sequence[RunShape]
) -> tuple[Fixing, ...]:
    """Return the supports of each straight of each new run."""
    found: list[Fixing] = []
    for shape in shapes:
        mass = results.containment[shape.run.tag].mass_kg_m if results.containment else 0.0
        found += _of_run(shape, mass, installation)
    return tuple(found)


def line_supports(lines: Sequence[EnclosedLine]) -> tuple[Fixing, ...]:
    """Return the saddles of conduit and trunking outside the runs."""
    found = []
    for line in lines:
        leg = line.leg
        upright = abs(leg.end.z - leg.start.z) > abs(leg.length_mm) / 2
        spacing, basis = _enclosure_spacing(line.item, upright=upright)
        if spacing is None:
            continue
        length = round(leg.length_mm)
        what = ("saddle, " if "conduit" in line.item else "screw fixing, ") + line.item
        where = f"wall {leg.wall}" if leg.wall else "off the walls"
        count = math.ceil(length / spacing) + 1
        found.append(Fixing(line.mark, where, what, spacing, length, count, basis))
    return tuple(found)


def _of_run(shape: RunShape, mass_kg_m: float, installation: Installation) -> Iterator[Fixing]:
    run = shape.run
    laid = LAID_IN.get(run.kind)
    for straight in shape.straights:
        where = f"wall {straight.wall}" if straight.wall else "overhead"
        if laid is None:
            yield from _fixed_to_wall(run, straight, where)
            continue
        spacing, basis = _laid_spacing(laid, run, mass_kg_m)
        end = round(1000 * _value("support_from_fitting_end"))
        count = supports_along(straight.length_mm, spacing, end)
        what = _support(run, straight, installation)
        yield Fixing(run.tag, where, what, spacing, straight.length_mm, count, basis)


def _value(key: str, name: str = "tray_supports") -> float:
    return float(table("containment", name).row(key=key)["value"])


def _laid_spacing(laid: str, run: Containment, mass_kg_m: float) -> tuple[int, str]:
    """Return the spacing of supports of tray, basket and ladder, mm, and its basis."""
    normal = containment.support_spacing(laid, run.width_mm)
    reserve = _value("reserve", "tray_load")
    limit = _value("planning_limit_medium_duty_1p5m", "tray_load")
    load = mass_kg_m * reserve
    spacing = tray_span_mm(load, limit, round(normal.value))
    words = f"load {mass_kg_m:.1f} × {reserve:g} = {load:.1f} kg/m"
    if spacing < normal.value:
        return spacing, f"{words}, over {limit:g} kg/m: closer than {normal.value:.0f} (derived)"
    return spacing, f"{words}, up to {limit:g} kg/m at {normal.value:.0f} (common practice)"


def _support(run: Containment, straight: Straight, installation: Installation) -> str:
    width = f"{run.width_mm:g} {LAID_IN[run.kind]}"
    if straight.heading != "level":
        return f"stand-off bracket for {width}"
    if straight.wall:
        return f"wall bracket for {width}"
    return f"trapeze hanger for {width}, rods {hanger_rod_mm(straight, installation)} mm"


def hanger_rod_mm(straight: Straight, installation: Installation) -> int:
    """Return the length of each of the two rods of a hanger, mm: to the ceiling and 100 mm more.

    The room is the one whose walls the run touches; 0 where no room is known.
    """
    run = installation.containment[straight.run]
    walls = [installation.walls[w] for w in run.walls if w in installation.walls]
    if not walls:
        return 0
    height = installation.rooms[walls[0].room].height_mm
    return max(round(height - straight.start.z), 0) + 100


def _fixed_to_wall(run: Containment, straight: Straight, where: str) -> Iterator[Fixing]:
    item = f"{run.width_mm:g} mm {run.kind}"
    if run.width_mm != run.height_mm or "conduit" not in run.kind:
        item = f"{run.width_mm:g} × {run.height_mm:g} {run.kind}"
    spacing, basis = _enclosure_spacing(item, upright=straight.heading != "level")
    if spacing is None:
        return
    what = ("saddle, " if "conduit" in run.kind else "screw fixing, ") + item
    count = math.ceil(straight.length_mm / spacing) + 1
    yield Fixing(run.tag, where, what, spacing, straight.length_mm, count, basis)


def _enclosure_spacing(item: str, *, upright: bool) -> tuple[int | None, str]:
    """Return the spacing of saddles or fixings of an item such as "25 mm steel conduit"."""
    material = next((m for m in ("steel", "plastic", "flexible") if m in item), "")
    what = "conduit" if "conduit" in item else "trunking"
    sizes = [float(word) for word in item.split() if word.replace(".", "").isdigit()]
    size = sizes[0] if sizes else 20.0  # flexible conduit whose size is open: the usual one
    if what == "trunking" and len(sizes) > 1:
        size = sizes[0] * sizes[1]
    direction: containment.Direction = "vertical" if upright else "horizontal"
    try:
        found = containment.support_spacing(f"{material} {what}", size, direction)
    except OutsideTableError:
        return None, ""
    return round(found.value), source_words(found)
