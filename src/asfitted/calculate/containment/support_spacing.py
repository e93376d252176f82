"""How far apart the supports of a run stand: by the tables, closer where its load asks for it.

Drawings tell and the fixings list counts what is worked out here.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from asfitted.calculate.materials.item_words import source_words
from asfitted.errors import OutsideTableError
from asfitted.reference import containment
from asfitted.reference.loader import table

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Containment

#: Kinds of run that cables are laid in, by the name that the tables of supports give them.
LAID_IN = MappingProxyType(
    {"perforated tray": "tray", "wire basket": "basket", "cable ladder": "ladder"}
)
LEAST_SPAN_MM = 500
STEP_MM = 50


@dataclass(frozen=True)
class SupportSpacing:
    """The greatest spacing of the supports of a run.

    Attributes:
        spacing_mm: what holds.
        tabulated_mm: what the tables give whatever the run carries.
        load_kg_m: what the run carries with its reserve; None where the tables do not ask.
        basis: where the spacing comes from, in words.
    """

    spacing_mm: int
    tabulated_mm: int
    load_kg_m: float | None
    basis: str

    @property
    def is_closer(self) -> bool:
        """Whether the load asks for less than the tables give."""
        return self.spacing_mm < self.tabulated_mm


def support_spacing(
    run: Containment,
    results: CalculationResults,
    direction: Literal["horizontal", "vertical"] = "horizontal",
) -> SupportSpacing | None:
    """Return the spacing of the supports of a run; None where no table has its kind.

    The load is that of the heaviest piece of the run, so that one figure holds for all of it.
    Source: On-Site Guide tables of supports, as ``reference.containment.support_spacing``.
    """
    kind = LAID_IN.get(run.kind, run.kind)
    size = run.width_mm * run.height_mm if "trunking" in kind else run.width_mm
    try:
        normal = containment.support_spacing(kind, size, direction)
    except OutsideTableError:
        return None
    tabulated = round(normal.value)
    if run.kind not in LAID_IN:
        return SupportSpacing(tabulated, tabulated, None, source_words(normal))
    carried = results.containment.get(run.tag)
    return _by_load(tabulated, carried.mass_kg_m if carried is not None else 0.0)


def _by_load(tabulated_mm: int, mass_kg_m: float) -> SupportSpacing:
    reserve = _of_load("reserve")
    limit = _of_load("planning_limit_medium_duty_1p5m")
    load = mass_kg_m * reserve
    spacing = tray_span_mm(load, limit, tabulated_mm)
    words = f"load {mass_kg_m:.1f} × {reserve:g} = {load:.1f} kg/m"
    if spacing < tabulated_mm:
        basis = f"{words}, over {limit:g} kg/m: closer than {tabulated_mm} (derived)"
    else:
        basis = f"{words}, up to {limit:g} kg/m at {tabulated_mm} (common practice)"
    return SupportSpacing(spacing, tabulated_mm, load, basis)


def _of_load(key: str) -> float:
    return float(table("containment", "tray_load").row(key=key)["value"])


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
