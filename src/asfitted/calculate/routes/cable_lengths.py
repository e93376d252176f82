"""From a drawn way to the length of a cable and the length to cut, with its arithmetic.

Steps of the cutting allowance (common practice): legs; 0.3 m for each change of level on a wall;
tails at both ends and making off armour; waste; rounded up. Every term is kept to the millimetre.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.results import LengthPart
from asfitted.reference import cable_family, points, termination

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.results import RouteLeg
    from asfitted.resolve.installation import Cable, Installation

# Cable bought by the reel or box is cut to the next tenth of a metre: common practice.
_REEL_STEP_M = 0.1
_LARGE_ISOLATOR_A = 32.0
_DATA_TAILS = {
    "camera": "camera",
    "data outlet": "data_outlet",
    "access point": "data_outlet",
    "recorder": "cabinet",
    "12 V supply": "cabinet",
    "PoE switch": "cabinet",
}


@dataclass(frozen=True)
class Lengths:
    """Lengths of one cable, m; ``parts`` add up to ``cut_m``."""

    path_m: float
    tails_m: float
    cut_m: float
    parts: tuple[LengthPart, ...]


def tail_key(installation: Installation, tag: str) -> str:
    """Return the place of ``reference.termination`` for the tail at a board, point or device.

    Raises:
        KeyError: no such tag.
    """
    if tag in installation.boards:
        board = installation.boards[tag]
        return "distribution_board" if board.phases == 3 else "consumer_unit"
    if tag in installation.points:
        point = installation.points[tag]
        key = points.point_kinds()[point.kind].tail
        is_large = point.rating_a is not None and point.rating_a > _LARGE_ISOLATOR_A
        larger = {"isolator_small": "isolator_large", "industrial_socket": "interlocked_socket"}
        return larger.get(key, key) if is_large else key
    if installation.cabinet is not None and tag == installation.cabinet.tag:
        return "cabinet"
    return _DATA_TAILS[installation.data_devices[tag].kind]


def _mm(length_mm: float) -> int:
    return round(length_mm)


def _leg_parts(legs: Sequence[RouteLeg]) -> list[tuple[str, int]]:
    """Return the legs as terms; sections of one run that follow each other are one term."""
    terms: list[tuple[str, float]] = []
    before = ""
    for leg in legs:
        if leg.containment and leg.containment == before:
            terms[-1] = (terms[-1][0], terms[-1][1] + leg.length_mm)
        else:
            terms.append(
                (f"along {leg.containment}" if leg.containment else leg.words, leg.length_mm)
            )
        before = leg.containment
    return [(words, _mm(length)) for words, length in terms]


def changes_of_level(legs: Sequence[RouteLeg]) -> int:
    """Return how often a way changes from one level to another between level legs.

    Legs up or down at the two ends are drawn in full and are no change; only an upright leg with
    a level leg before and after it is. Heights at the two ends of a passage are not comparable.
    """
    drawn = [leg for leg in legs if leg.kind not in ("declared", "passage")]
    upright = [leg.start.z != leg.end.z for leg in drawn]
    inner = range(1, len(upright) - 1)
    return sum(1 for i in inner if upright[i] and not upright[i - 1] and not all(upright[i + 1 :]))


def lengths_of(installation: Installation, cable: Cable, legs: Sequence[RouteLeg]) -> Lengths:
    """Return the lengths of a cable whose way is known.

    Raises:
        OutsideTableError: no tail or waste is tabulated for it.
    """
    terms = _leg_parts(legs)
    if cable.extra_m:
        terms.append(("longer than drawn, found on site", _mm(cable.extra_m * 1000)))
    path = sum(length for _, length in terms)
    tails = _tail_terms(installation, cable)
    changes = changes_of_level(legs)
    if changes:
        allowance = termination.level_change_allowance_m().value * 1000
        words = f"for {changes} change{'s' * (changes > 1)} of level on the wall"
        terms.append((words, _mm(changes * allowance)))
    terms += [*tails, *_gland_terms(cable)]
    cut, terms = _with_waste(cable, terms)
    return Lengths(path / 1000, sum(t for _, t in tails) / 1000, cut, _as_parts(terms))


def lengths_without_way(
    installation: Installation, cable: Cable, straight_mm: float, words: str
) -> Lengths:
    """Return the lengths of a cable from one figure: measured on site, or along the walls.

    A measured length is from end to end, tails in it. An existing cable is not cut: its ``cut_m``
    is 0 and the part stands for what was measured.
    """
    terms = [(words, _mm(straight_mm))]
    tails: list[tuple[str, int]] = []
    if cable.measured_length_m is None:
        tails = _tail_terms(installation, cable)
        terms += [*tails, *_gland_terms(cable)]
    cut, terms = _with_waste(cable, terms)
    return Lengths(_mm(straight_mm) / 1000, sum(t for _, t in tails) / 1000, cut, _as_parts(terms))


def _as_parts(terms: Sequence[tuple[str, int]]) -> tuple[LengthPart, ...]:
    return tuple(LengthPart(words, length / 1000) for words, length in terms)


def _tail_terms(installation: Installation, cable: Cable) -> list[tuple[str, int]]:
    return [
        (f"tail at {tag}", _mm(termination.tail_mm(tail_key(installation, tag)).value))
        for tag in (cable.from_end, cable.to_end)
    ]


def _gland_terms(cable: Cable) -> list[tuple[str, int]]:
    if not cable_family.family(cable.family).is_armoured:
        return []
    return [("making off armour, 2 ends", 2 * _mm(termination.gland_making_off_mm().value))]


def _with_waste(cable: Cable, terms: list[tuple[str, int]]) -> tuple[float, list[tuple[str, int]]]:
    rounding = termination.cut_rounding(cable.family)
    net = sum(length for _, length in terms)
    waste = max(math.ceil(round(net * rounding.waste, 6)), _mm(rounding.least_waste_m * 1000))
    words = f"waste {rounding.waste:.0%}"
    if waste > math.ceil(round(net * rounding.waste, 6)):
        words += f", at least {rounding.least_waste_m:g} m"
    step = _mm((rounding.round_up_to_m or _REEL_STEP_M) * 1000)
    cut = -(-(net + waste) // step) * step
    return cut / 1000, [*terms, (words, waste), ("rounded up", cut - net - waste)]
