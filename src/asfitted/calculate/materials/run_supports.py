"""Supports of runs and of conduit outside them, at the spacing that the load or a table allows."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from asfitted.calculate.containment.support_spacing import LAID_IN, support_spacing
from asfitted.calculate.materials.item_words import run_item, source_words
from asfitted.calculate.materials.items import Fixing
from asfitted.calculate.materials.run_shape import room_of
from asfitted.calculate.materials.top_fixings import OFF
from asfitted.errors import OutsideTableError
from asfitted.reference import containment
from asfitted.reference.loader import table

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.calculate.materials.run_shape import RunShape, Straight
    from asfitted.calculate.materials.wanted_pieces import EnclosedLine
    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Containment, Installation


def supports_along(length_mm: int, spacing_mm: int, end_mm: int) -> int:
    """Return how many supports a straight needs: one within ``end_mm`` of each end.

    Example:
        >>> supports_along(4400, 1500, 300), supports_along(500, 1500, 300)
        (4, 1)
    """
    between = length_mm - 2 * end_mm
    return 1 if between <= 0 else math.ceil(between / spacing_mm) + 1


def run_supports(
    installation: Installation, results: CalculationResults, shapes: Sequence[RunShape]
) -> tuple[Fixing, ...]:
    """Return the supports of each straight of each new run."""
    found: list[Fixing] = []
    for shape in shapes:
        found += _of_run(shape, results, installation)
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
        what = ("metal saddle, " if "conduit" in line.item else "screw fixing, ") + line.item
        where = f"wall {leg.wall}" if leg.wall else f"{OFF}the walls"
        if leg.kind == "off-wall" and leg.wall:
            where = f"{OFF}{where}"
        count = math.ceil(length / spacing) + 1
        found.append(Fixing(line.mark, where, what, spacing, length, count, basis))
    return tuple(found)


def _of_run(
    shape: RunShape, results: CalculationResults, installation: Installation
) -> Iterator[Fixing]:
    run = shape.run
    for straight in shape.straights:
        upright = straight.heading != "level"
        spaced = support_spacing(run, results, "vertical" if upright else "horizontal")
        if spaced is None:
            continue
        where = f"wall {straight.wall}" if straight.wall else "overhead"
        length = straight.length_mm
        if run.kind in LAID_IN:
            what = _support(run, straight, installation)
            count = supports_along(length, spaced.spacing_mm, _end_mm())
        else:
            item = run_item(run)
            what = ("metal saddle, " if "conduit" in run.kind else "screw fixing, ") + item
            count = math.ceil(length / spaced.spacing_mm) + 1
        yield Fixing(run.tag, where, what, spaced.spacing_mm, length, count, spaced.basis)


def _end_mm() -> int:
    """Return how far from its end a straight has its first support, mm."""
    row = table("containment", "tray_supports").row(key="support_from_fitting_end")
    return round(1000 * float(row["value"]))


def _support(run: Containment, straight: Straight, installation: Installation) -> str:
    off = f", {run.stand_off_mm:g} mm off the wall" if run.stand_off_mm and straight.wall else ""
    width = f"{run.width_mm:g} {LAID_IN[run.kind]}{off}"
    if straight.heading != "level":
        return f"stand-off bracket for {width}"
    if straight.wall:
        return f"wall bracket for {width}"
    return f"trapeze hanger for {width}, rods {hanger_rod_mm(straight, installation)} mm"


def hanger_rod_mm(straight: Straight, installation: Installation) -> int:
    """Return the length of each of the two rods of a hanger, mm: to the ceiling and 100 mm more.

    0 where no room is known.
    """
    room = room_of(installation.containment[straight.run], installation)
    if not room:
        return 0
    height = installation.rooms[room].height_mm
    return max(round(height - straight.start.z), 0) + 100


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
