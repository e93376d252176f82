"""Capacity of a cable along its route: each leg rated as it lies, the least leg governs.

The 30 % rule (a cable that carries no more than 30 % of its grouped rating may be left out of the
count for the others) is not used: every companion counts, which is the safe side.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from typing import TYPE_CHECKING, Literal

from asfitted.calculate.current_capacity import (
    combined_factor,
    corrected_capacity_a,
    governing_length,
    required_capacity_a,
)
from asfitted.calculate.results import Factor
from asfitted.errors import OutsideTableError
from asfitted.reference import cables, factors

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.results import CableRoute, RouteLeg
    from asfitted.reference.figure import Figure
    from asfitted.resolve.installation import Cable, Containment, Device

SHORT_THROUGH_WALL_MM = 350.0
GROUND_C = 20.0
ALONE = (0, "bunched")
ASSUMED_METHOD = "C"
STAND_IN_FAMILY = "multicore_pvc"


@dataclass(frozen=True)
class Laid:
    """How one leg of a route lies, as far as its rating goes."""

    words: str
    method: str
    arrangement: str
    count: int
    depth_m: float | None = None
    in_duct: bool = False


@dataclass(frozen=True)
class LegRating:
    """One leg with one size of cable in it."""

    laid: Laid
    tabulated: Figure
    factors: tuple[Factor, ...]
    factor: float
    capacity_a: float
    required_a: float


@dataclass(frozen=True)
class Setting:
    """What is the same for a cable on every leg: its make, its device, the air about it."""

    family: str
    loaded: Literal[2, 3]
    ambient_c: float
    device_standard: str
    rating_a: float


@dataclass(frozen=True)
class CableUse:
    """What decides a cable's rating besides its size; ``assumed`` says what was not known."""

    setting: Setting
    legs: tuple[Laid, ...]
    assumed: str = ""


def cable_use(
    cable: Cable,
    route: CableRoute,
    sharing: Sequence[tuple[int, str]],
    *,
    device: Device,
    loaded: Literal[2, 3],
    containment: Mapping[str, Containment],
) -> CableUse:
    """Return the legs of a cable with what its rating depends on.

    A hole through a wall of up to 350 mm does not govern (common practice). A cable whose way is
    not drawn is taken as clipped direct, method C, alone, and says so.
    """
    pairs = list(zip(route.legs, sharing or [ALONE] * len(route.legs), strict=False))
    long = [p for p in pairs if not _is_short_hole(p[0])] or pairs
    laid = dict.fromkeys(_laid(leg, others, containment) for leg, others in long)
    assumed = ""
    if not laid:
        assumed = "the way of the cable is not drawn: rated as clipped direct, alone"
        laid = {Laid("way not drawn", ASSUMED_METHOD, "single_layer_wall", 1): None}
    setting = Setting(cable.family, loaded, cable.ambient_c, device.standard, device.rating_a)
    return CableUse(setting, tuple(laid), assumed)


def _is_short_hole(leg: RouteLeg) -> bool:
    return leg.kind == "through-wall" and leg.length_mm <= SHORT_THROUGH_WALL_MM


def _laid(leg: RouteLeg, others: tuple[int, str], containment: Mapping[str, Containment]) -> Laid:
    buried = leg.method.upper().startswith("D")
    run = containment.get(leg.containment)
    return Laid(
        words=leg.section or leg.words,
        method=leg.method,
        arrangement=others[1] or ALONE[1],
        count=others[0] + 1,
        depth_m=run.depth_mm / 1000 if run and buried and run.depth_mm else None,
        in_duct=buried and "duct" in leg.enclosure,
    )


def rate(use: CableUse, csa_mm2: float) -> LegRating:
    """Return the rating of the leg that governs, for one size.

    Raises:
        OutsideTableError: a table does not hold the size, the method or the group.
    """
    rated = [_rate_leg(use.setting, csa_mm2, leg) for leg in use.legs]
    return rated[governing_length([leg.capacity_a for leg in rated])]


def try_rate(use: CableUse, csa_mm2: float) -> LegRating | str:
    """Return the governing rating, or in words why the tables do not give it."""
    try:
        return rate(use, csa_mm2)
    except OutsideTableError as outside:
        return str(outside)


@cache
def _rate_leg(setting: Setting, csa_mm2: float, laid: Laid) -> LegRating:
    tabulated = _tabulated(setting.family, csa_mm2, laid.method, setting.loaded)
    named = _factors(setting.family, laid, setting.ambient_c, setting.device_standard)
    product = combined_factor(**{f.symbol.lower(): f.value for f in named})
    return LegRating(
        laid=laid,
        tabulated=tabulated,
        factors=named,
        factor=product,
        capacity_a=corrected_capacity_a(tabulated.value, factor=product),
        required_a=required_capacity_a(setting.rating_a, factor=product),
    )


@cache
def _tabulated(family: str, csa_mm2: float, method: str, loaded: int) -> Figure:
    """Return It; where the family has no column for the method, that of multicore 70 C cable."""
    try:
        found = cables.tabulated_capacity(family, csa_mm2, method, loaded)
    except OutsideTableError:
        if _has_method(family, method, loaded) or cables.family(family).insulation_c < 70:
            raise
        found = cables.tabulated_capacity(STAND_IN_FAMILY, csa_mm2, method, loaded)
        words = f"{cables.family(family).title}: no method {method}, read as multicore 70 °C cable"
        return replace(found, note="; ".join(part for part in (words, found.note) if part))
    if method in ("A", "B") and cables.family(family).construction == "flexible":
        return replace(found, note=f"the table is for free air, not method {method}")
    return found


@cache
def _has_method(family: str, method: str, loaded: int) -> bool:
    one = cables.family(family)
    for size in cables.standard_sizes(family, one.cores[0]):
        try:
            cables.tabulated_capacity(family, size, method, loaded)
        except OutsideTableError:
            continue
        return True
    return False


@cache
def _factors(family: str, laid: Laid, ambient_c: float, device_standard: str) -> tuple[Factor, ...]:
    insulation_c = cables.rating_insulation_c(family)
    buried = laid.method.upper().startswith("D")
    if buried:
        air = factors.ground(insulation_c, GROUND_C)
        where = f"ground at {GROUND_C:g} °C (reference condition)"
    else:
        air = factors.ambient_air(insulation_c, ambient_c)
        where = f"air at {ambient_c:g} °C"
    group = factors.grouping(laid.arrangement, laid.count)
    row = laid.arrangement.replace("_", " ")
    together = f"{laid.count} circuits, {row}" if laid.count > 1 else "alone"
    found = [_factor("Ca", air, where), _factor("Cg", group, together)]
    if laid.depth_m is not None:
        deep = factors.depth(laid.depth_m, in_duct=laid.in_duct)
        found.append(_factor("Cd", deep, f"{laid.depth_m:g} m deep"))
    device = factors.device_factor(device_standard, buried)
    if device.value != 1.0:
        found.append(_factor("Cc", device, "buried cable" if buried else device_standard))
    return tuple(found)


def _factor(symbol: str, figure: Figure, words: str) -> Factor:
    return Factor(symbol, figure.value, words, f"{figure.source} ({figure.provenance})")
