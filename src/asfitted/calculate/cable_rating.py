"""Capacity of a cable along its route: each leg rated as it lies, the least leg governs.

Cables that carry no more than 30 % of their grouped rating are left out of the count for the
others where the caller says so (``ignored``).
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
from asfitted.rounding import rounded

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
FREE_AIR = "free air"  # in place of a method letter: the tables of flexible cable have but this
IN_FREE_AIR = ("E", "F", "G")


@dataclass(frozen=True)
class Laid:
    """How one leg of a route lies, as far as its rating goes."""

    words: str
    method: str
    arrangement: str
    count: int
    depth_m: float | None = None
    in_duct: bool = False
    soil_km_w: float | None = None
    insulation_mm: float = 0.0
    ignored: int = 0  # lightly loaded companions that are not counted


@dataclass(frozen=True)
class LegRating:
    """One leg with one size of cable in it."""

    laid: Laid
    tabulated: Figure
    factors: tuple[Factor, ...]
    factor: float
    capacity_a: float
    required_a: float
    method: str  # that of the table: the letter of the leg, or FREE_AIR
    doubt: str = ""  # why the capacity as it lies is not known, of this leg or of another


@dataclass(frozen=True)
class Setting:
    """What is the same for a cable on every leg: its make, its device, the air about it.

    ``rating_a`` is the current that the cable must be able to carry and ``rating_words`` its name:
    In of the device, or what a regulation puts in its place.
    """

    family: str
    loaded: Literal[2, 3]
    ambient_c: float
    device_standard: str
    rating_a: float
    rating_words: str = "In"
    rating_source: str = ""
    third_harmonic_pct: float | None = None


@dataclass(frozen=True)
class Needed:
    """The current a cable must be able to carry, A, its name and why it is not just In."""

    amps: float
    words: str
    source: str


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
    ignored: Sequence[int] = (),
    needed: Needed | None = None,
    third_harmonic_pct: float | None = None,
) -> CableUse:
    """Return the legs of a cable with what its rating depends on.

    A hole through a wall of up to 350 mm does not govern (common practice). A cable whose way is
    not drawn is taken as clipped direct, method C, alone, and says so.
    """
    shared = sharing or [ALONE] * len(route.legs)
    left_out = ignored or [0] * len(route.legs)
    company = list(zip(route.legs, shared, left_out, strict=False))
    long = [each for each in company if not _is_short_hole(each[0])] or company
    laid = list(
        dict.fromkeys(_laid(leg, others, light, containment) for leg, others, light in long)
    )
    assumed = ""
    if not laid:
        assumed = "the way of the cable is not drawn: rated as clipped direct, alone"
        laid = [Laid("way not drawn", ASSUMED_METHOD, "single_layer_wall", 1)]
    if cable.insulation_mm > 0:
        laid.append(_in_insulation(cable.insulation_mm, laid))
    need = needed or Needed(device.rating_a, "In", "")
    setting = Setting(
        cable.family,
        loaded,
        cable.ambient_c,
        device.standard,
        need.amps,
        rating_words=need.words,
        rating_source=need.source,
        third_harmonic_pct=third_harmonic_pct if loaded == 3 else None,
    )
    return CableUse(setting, tuple(laid), assumed)


def _in_insulation(length_mm: float, laid: Sequence[Laid]) -> Laid:
    """Return the piece in thermal insulation: method C, with the company of the fullest leg.

    Who passes the insulation with it is not known; the fullest leg is the safe side.
    """
    fullest = max(laid, key=lambda leg: (leg.count, leg.arrangement == "bunched"))
    in_air = not fullest.method.upper().startswith("D")
    return Laid(
        words=f"{length_mm:g} mm in thermal insulation",
        method="C",
        arrangement=fullest.arrangement if in_air else ALONE[1],
        count=fullest.count if in_air else 1,
        insulation_mm=length_mm,
        ignored=fullest.ignored if in_air else 0,
    )


def _is_short_hole(leg: RouteLeg) -> bool:
    is_hole = leg.kind in ("through-wall", "passage")
    return is_hole and leg.length_mm <= SHORT_THROUGH_WALL_MM


def _laid(
    leg: RouteLeg, others: tuple[int, str], ignored: int, containment: Mapping[str, Containment]
) -> Laid:
    buried = leg.method.upper().startswith("D")
    run = containment.get(leg.containment)
    return Laid(
        words=leg.section or leg.words,
        method=leg.method,
        arrangement=others[1] or ALONE[1],
        count=others[0] + 1,
        depth_m=run.depth_mm / 1000 if run and buried and run.depth_mm else None,
        in_duct=buried and "duct" in leg.enclosure,
        soil_km_w=run.soil_km_w if run and buried else None,
        ignored=ignored,
    )


def rate(use: CableUse, csa_mm2: float) -> LegRating:
    """Return the rating of the leg that governs, for one size.

    Raises:
        OutsideTableError: a table does not hold the size, the method or the group.
    """
    rated = [_rate_leg(use.setting, csa_mm2, leg) for leg in use.legs]
    governing = rated[governing_length([leg.capacity_a for leg in rated])]
    doubt = governing.doubt or next((leg.doubt for leg in rated if leg.doubt), "")
    return replace(governing, doubt=doubt)  # one leg that no table holds may be the worst


def try_rate(use: CableUse, csa_mm2: float) -> LegRating | str:
    """Return the governing rating, or in words why the tables do not give it."""
    try:
        return rate(use, csa_mm2)
    except OutsideTableError as outside:
        return str(outside)


@cache
def _rate_leg(setting: Setting, csa_mm2: float, laid: Laid) -> LegRating:
    tabulated = _tabulated(setting.family, csa_mm2, laid.method, setting.loaded)
    named = _factors(setting, laid)
    product = combined_factor(**{f.symbol.lower(): f.value for f in named})
    is_flexible = cables.family(setting.family).construction == "flexible"
    return LegRating(
        laid=laid,
        tabulated=tabulated,
        factors=named,
        factor=product,
        capacity_a=corrected_capacity_a(tabulated.value, factor=product),
        required_a=required_capacity_a(setting.rating_a, factor=product),
        method=FREE_AIR if is_flexible else laid.method,
        doubt=_other_than_free_air(laid.method) if is_flexible else "",
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
    doubt = _other_than_free_air(method)
    if doubt and cables.family(family).construction == "flexible":
        return replace(found, note="; ".join(part for part in (doubt, found.note) if part))
    return found


def _other_than_free_air(method: str) -> str:
    """Return why the table of flexible cable does not cover a method, "" where it does."""
    if method in IN_FREE_AIR:
        return ""
    return f"rated by the table for free air; no table for flexible cable laid by method {method}"


def method_words(method: str) -> str:
    """Return the basis of a rating in words: "method B", or "table for free air"."""
    return f"table for {FREE_AIR}" if method == FREE_AIR else f"method {method}"


def capacity_words(capacity_a: float, doubt: str, digits: int = 1, unit: str = "") -> str:
    """Return Iz as told on paper, A; one that no table gives as the cable lies is not checked.

    >>> capacity_words(32.85, ""), capacity_words(16, "no table", unit="A")
    ('32.9', 'not checked (free air 16.0 A)')
    """
    text = " ".join(part for part in (rounded(capacity_a, digits), unit) if part)
    return f"not checked ({FREE_AIR} {text})" if doubt else text


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
def _factors(setting: Setting, laid: Laid) -> tuple[Factor, ...]:
    insulation_c = cables.rating_insulation_c(setting.family)
    buried = laid.method.upper().startswith("D")
    if buried:
        air = factors.ground(insulation_c, GROUND_C)
        where = f"ground at {GROUND_C:g} °C (reference condition)"
    else:
        air = factors.ambient_air(insulation_c, setting.ambient_c)
        where = f"air at {setting.ambient_c:g} °C"
    group = factors.grouping(laid.arrangement, laid.count)
    found = [_factor("Ca", air, where), _factor("Cg", group, _together(laid))]
    if laid.insulation_mm > 0:
        inside = factors.insulation_length(laid.insulation_mm)
        words = f"{laid.insulation_mm:g} mm totally surrounded by thermal insulation"
        found.append(_factor("Ci", inside, words))
    if laid.soil_km_w is not None:
        soil = factors.soil(laid.soil_km_w, in_duct=laid.in_duct)
        found.append(_factor("Cs", soil, f"soil of {laid.soil_km_w:g} K·m/W"))
    if laid.depth_m is not None:
        deep = factors.depth(laid.depth_m, in_duct=laid.in_duct)
        found.append(_factor("Cd", deep, f"{laid.depth_m:g} m deep"))
    standard = setting.device_standard
    device = factors.device_factor(standard, buried)
    if device.value != 1.0:
        found.append(_factor("Cc", device, "buried cable" if buried else standard))
    if setting.third_harmonic_pct is not None:
        harmonic, _ = factors.third_harmonic(setting.third_harmonic_pct)
        words = f"{setting.third_harmonic_pct:g} % third harmonic, loaded neutral"
        found.append(_factor("Ch", harmonic, words))
    return tuple(found)


def _together(laid: Laid) -> str:
    row = laid.arrangement.replace("_", " ")
    words = f"{laid.count} circuits, {row}" if laid.count > 1 else "alone"
    if laid.ignored:
        words += f"; {laid.ignored} lightly loaded (30 % or less of grouped rating) not counted"
    return words


def _factor(symbol: str, figure: Figure, words: str) -> Factor:
    return Factor(symbol, figure.value, words, f"{figure.source} ({figure.provenance})")
