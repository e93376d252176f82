"""The take-off of a job: cuts, fixings, glands and the list of materials."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from asfitted.calculate.materials.accessories import accessory_lines
from asfitted.calculate.materials.cable_fixings import bundle_ties, cable_fixings
from asfitted.calculate.materials.cable_terminations import (
    connector_lines,
    gland_ends,
    gland_lines,
)
from asfitted.calculate.materials.cut_plans import cut_plan
from asfitted.calculate.materials.item_words import listed_item, without_size
from asfitted.calculate.materials.items import MaterialLine, TakeOff
from asfitted.calculate.materials.run_fittings import fitting_lines
from asfitted.calculate.materials.run_shape import run_shapes
from asfitted.calculate.materials.run_supports import line_supports, run_supports
from asfitted.calculate.materials.top_fixings import top_fixing_lines, top_fixings
from asfitted.calculate.materials.wanted_pieces import enclosed_lines, wanted_pieces
from asfitted.reference.loader import table

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.calculate.materials.items import Fixing, ItemCuts
    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Installation

_HOLES = {"wall bracket": 2, "stand-off bracket": 2}  # screws a support: common practice
MOST_SUBJECTS = 20  # named one by one in the list of materials


def take_off(installation: Installation, results: CalculationResults) -> TakeOff:
    """Return everything to cut, fix and buy for the new work of a job.

    Args:
        installation: The job as resolved.
        results: Its figures; routes, sizes, sections and containment are read.
    """
    shapes = run_shapes(installation)
    lines = enclosed_lines(installation, results)
    wanted = wanted_pieces(installation, results, shapes, lines)
    cuts = tuple(cut_plan(one, installation.stock) for one in wanted)
    fixings = (
        *run_supports(installation, results, shapes),
        *line_supports(lines),
        *bundle_ties(shapes, results),
        *cable_fixings(installation, results),
    )
    top = top_fixings(installation, fixings)
    glands, missing = gland_ends(installation, results)
    bars = {
        one.item: max((c.stock_mm for c in one.cuts), default=3000)
        for one in cuts
        if one.of == "containment"
    }
    return TakeOff(
        cuts=cuts,
        fixings=fixings,
        top_fixings=top,
        glands=glands,
        lines=(
            *map(_length_line, cuts),
            *fitting_lines(installation, results, shapes, bars, lines),
            *_fixing_lines(fixings),
            *top_fixing_lines(top),
            *gland_lines(glands),
            *connector_lines(installation),
            *accessory_lines(installation, results),
        ),
        left_out=(*missing, *_without_way(installation, results)),
    )


def _length_line(cuts: ItemCuts) -> MaterialLine:
    """Return the line of a length: needed, to order and from hand."""
    measured = cuts.cut_by_seller and not cuts.from_hand
    ways = "to length" if measured else ", ".join(_packs(cuts))
    pieces = sum(len(cut.pieces) for cut in cuts.cuts)
    return MaterialLine(
        "Cable" if cuts.of == "cable" else "Containment",
        listed_item(cuts.item),
        cuts.needed_mm / 1000,
        cuts.ordered_mm / 1000,
        "m",
        ways,
        f"geometry: {pieces} piece{'s' * (pieces > 1)}; {_bore_words(cuts.item)}{cuts.basis}",
        sum(cut.rest_mm for cut in cuts.to_order) / 1000,
    )


def _bore_words(item: str) -> str:
    """Return why conduit without a size is ordered by its bore."""
    by_bore = item != without_size(item)
    return "bore by the space factor, On-Site Guide Appendix E; " if by_bore else ""


def _packs(cuts: ItemCuts) -> Iterator[str]:
    """Yield what to order and what to take from hand, longest first."""
    for in_hand in (False, True):
        lengths = [cut.stock_mm for cut in cuts.cuts if cut.in_hand is in_hand]
        for length in sorted(set(lengths), reverse=True):
            words = f"{lengths.count(length)}×{length / 1000:g} m"
            yield f"{words} in hand" if in_hand else words


def _subject_words(subjects: Sequence[str]) -> str:
    """Return what things are fixed on: many of them are counted, the brief tells of each."""
    each = list(dict.fromkeys(subjects))
    left = len(each) - MOST_SUBJECTS
    named = ", ".join(each[:MOST_SUBJECTS])
    return f"{named} and {left} more (each in the route brief)" if left > 1 else ", ".join(each)


def _fixing_lines(fixings: Sequence[Fixing]) -> Iterator[MaterialLine]:
    """Yield supports and clips by kind, with the waste of small fixings."""
    waste = float(table("termination", "cutting_allowance").row(waste="fixings")["value"])
    kinds: dict[str, list[Fixing]] = {}
    for fixing in fixings:
        kinds.setdefault(fixing.what, []).append(fixing)
    screws = rods_mm = 0
    for what, same in kinds.items():
        count = sum(f.count for f in same)
        small = not what.startswith(("wall bracket", "stand-off", "trapeze"))
        spacings = sorted({f.spacing_mm for f in same})
        words = " or ".join(f"{s}" for s in spacings)
        subjects = _subject_words([f.subject for f in same])
        yield MaterialLine(
            "Supports and fixings",
            listed_item(what),
            count,
            math.ceil(round(count * (1 + waste), 6)) if small else count,
            "each",
            "",
            f"at {words} mm on {subjects}; {same[0].basis}",
        )
        screws += count * next((n for k, n in _HOLES.items() if what.startswith(k)), 0)
        if what.startswith("trapeze"):
            rods_mm += 2 * count * int(what.split()[-2])
    if screws:
        ordered = math.ceil(round(screws * (1 + waste), 6))
        basis = "2 to each bracket, common practice"
        yield MaterialLine(
            "Supports and fixings", "wall fixing, M8", screws, ordered, "each", "", basis
        )
    if rods_mm:
        basis = "2 rods to each hanger, to the ceiling and 100 mm more, common practice"
        metres = rods_mm / 1000
        yield MaterialLine(
            "Supports and fixings",
            "threaded rod M10",
            metres,
            float(math.ceil(metres)),
            "m",
            "",
            basis,
        )


def _without_way(installation: Installation, results: CalculationResults) -> Iterator[str]:
    """Yield the new cables and runs that could not be counted, and why."""
    for cable in installation.cables.values():
        route = results.routes.get(cable.tag)
        if cable.state == "new" and (route is None or route.broken):
            why = route.broken if route is not None and route.broken else "no route"
            yield f"fixings of {cable.tag}: {why}"
    for run in installation.containment.values():
        if run.state == "new" and run.kind == "hidden run":
            yield f"{run.tag}: what a hidden run is made of is not recorded"
