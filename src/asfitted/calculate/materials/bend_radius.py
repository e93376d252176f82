"""The inside radius that the fittings of a run must have: that of the cable that bends least."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.containment.section_fill import cable_size
from asfitted.errors import InputOutOfRangeError, OutsideTableError
from asfitted.reference import cable_family
from asfitted.reference.containment import bend_radius

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Cable, Installation

_SHAPED_FROM_MM2 = 25.0  # conductors of armoured cable from here on are shaped
WITHOUT_CABLES = "radius for its cables: not recorded"


def least_radius_mm(cable: Cable, results: CalculationResults) -> float | None:
    """Return the least inside bend radius of a cable, mm; None where its size is not known.

    Source: On-Site Guide Table D5, multiples of the overall diameter, as held in the tables.
    """
    figures = results.cables.get(cable.tag)
    csa_mm2 = figures.csa_mm2 if figures is not None else cable.csa_mm2
    shaped = csa_mm2 is not None and csa_mm2 >= _SHAPED_FROM_MM2
    try:
        overall_mm = figures.overall_mm if figures is not None else cable_size(cable, {}).overall_mm
        construction = cable_family.family(cable.family).construction
        return bend_radius(construction, overall_mm, shaped=shaped).value * overall_mm
    except (InputOutOfRangeError, OutsideTableError):
        return None


def radius_words(tag: str, installation: Installation, results: CalculationResults) -> str:
    """Return the radius to order the fittings of a run with: "inside radius ≥ 127 mm"."""
    tags = {c for s in results.sections.values() if s.containment == tag for c in s.cables}
    needed = [least_radius_mm(installation.cables[one], results) for one in tags]
    known = [radius for radius in needed if radius is not None]
    if not known or len(known) < len(needed):
        return WITHOUT_CABLES
    return f"inside radius ≥ {max(known):.0f} mm"
