"""The gland of each armoured end: its size by the cable, its type by the enclosure and the place.

Materials, cable cards and detail sheets all ask here, so that one cable has one gland on paper.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from asfitted.errors import OutsideTableError
from asfitted.reference import cables, termination
from asfitted.reference.armoured_end import StripLengths, strip_lengths

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults
    from asfitted.reference.figure import TextFigure
    from asfitted.resolve.installation import Cable, Installation

SPLASHING_WATER = 4  # second numeral of the IP code, BS EN 60529


@dataclass(frozen=True)
class ArmouredGland:
    """The gland that a cable takes, and how the cable is stripped for it.

    Attributes:
        size: Trade size, "20S".
        bedding_mm: Nominal diameter of the cable over its bedding, under the armour, mm.
        thread: Entry thread, "M20x1.5"; None where it is not held for the size.
        lengths: Bared armour and cores, mm; None where they are not held for the size.
    """

    size: TextFigure
    bedding_mm: float
    thread: TextFigure | None
    lengths: StripLengths | None


def line_csa_mm2(cable: Cable, results: CalculationResults) -> float | None:
    """Return the size of the line conductors, mm2, None where it is not known."""
    figures = results.cables.get(cable.tag)
    return figures.csa_mm2 if figures and figures.csa_mm2 else cable.csa_mm2


def armoured_gland(cable: Cable, results: CalculationResults) -> ArmouredGland | None:
    """Return the gland of an armoured cable, None where its size is not known.

    The size is that of the table of the cable: the smallest of the ranges of glands that takes it
    both over all and over its bedding.

    Raises:
        OutsideTableError: the cable has no armour, or its size is not in the table.
    """
    csa_mm2 = line_csa_mm2(cable, results)
    if csa_mm2 is None:
        return None
    size = cables.gland_size(cable.family, cable.cores, csa_mm2)
    bedding = cables.bedding_diameter_mm(cable.family, cable.cores, csa_mm2)
    return ArmouredGland(size, bedding.value, _thread(size.text), _lengths(size.text))


def _thread(size: str) -> TextFigure | None:
    try:
        return termination.gland_entry_thread(size)
    except OutsideTableError:
        return None


def _lengths(size: str) -> StripLengths | None:
    try:
        return strip_lengths(size)
    except OutsideTableError:
        return None


def gland_type(tag: str, installation: Installation) -> Literal["BW", "CW"]:
    """Return the type of gland at an end: CW seals on the outer sheath, BW does not.

    CW outside, in an enclosure proof against splashing water or better (second numeral 4 and up),
    and where no IP code is recorded; BW inside in any other enclosure (common practice).
    """
    held = installation.points.get(tag) or installation.boards.get(tag)
    if held is None or installation.position_of(tag).outside:
        return "CW"
    code = re.fullmatch(r"IP[0-6X]([0-9X])[A-Z]*", held.ip.replace(" ", "").upper())
    if code is None:
        return "CW"
    return "CW" if code[1] != "X" and int(code[1]) >= SPLASHING_WATER else "BW"
