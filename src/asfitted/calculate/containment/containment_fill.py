"""How full containment is, and the size to order."""

from __future__ import annotations

import itertools
import math
from typing import TYPE_CHECKING

from asfitted.calculate.ranges import require_above_zero, require_fraction, require_not_negative
from asfitted.errors import InputOutOfRangeError

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence


def total_term(cables: Sequence[tuple[int, float]], *, spare_percent: float = 0.0) -> float:
    """Return the sum of cable terms.

    sum(n x term) x (1 + spare / 100)

    Args:
        cables: Pairs of number of conductors, 0 or more, and term of one, ratio, above 0.
        spare_percent: Room to leave, %, 0 or more.

    Returns:
        Sum of terms, ratio.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        On-Site Guide Appendix E.

    Example:
        >>> total_term([(6, 58)])
        348.0
    """
    require_not_negative(spare_percent=spare_percent)
    total = 0.0
    for number, term in cables:
        require_not_negative(number=number)
        require_above_zero(term=term)
        total += number * term
    return total * (1.0 + spare_percent / 100.0)


def smallest_by_term(total: float, *, terms: Mapping[str, float]) -> str:
    """Return the size with the least term that is enough.

    Args:
        total: Sum of cable terms, ratio, above 0.
        terms: Term of each size, ratio; keys are the sizes, such as "20" or "50x50" in mm.

    Returns:
        Key of the size, mm.

    Raises:
        InputOutOfRangeError: no size is enough.

    Source:
        On-Site Guide Appendix E: the sum of cable terms must not exceed the term of the size.

    Example:
        >>> smallest_by_term(348, terms={"16": 290, "20": 460, "25": 800})
        '20'
    """
    require_above_zero(total=total)
    enough = [size for size, term in terms.items() if term >= total]
    if not enough:
        raise InputOutOfRangeError(
            f"terms add up to {total:g}, more than the largest, {max(terms.values()):g}"
        )
    return min(enough, key=lambda size: terms[size])


def count_by_term(containment_term: float, *, cable_term: float) -> int:
    """Return how many equal conductors go into a size by the term method.

    Args:
        containment_term: Term of the size, ratio, above 0.
        cable_term: Term of one conductor, ratio, above 0.

    Returns:
        Whole number of conductors, ratio rounded down.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        On-Site Guide Appendix E.

    Example:
        >>> count_by_term(460, cable_term=43)
        10
    """
    require_above_zero(containment_term=containment_term, cable_term=cable_term)
    return math.floor(containment_term / cable_term + 1e-9)


def filled_share(cable_areas_mm2: Sequence[float], *, inside_area_mm2: float) -> float:
    """Return the share of the inside that cables fill, ratio.

    Args:
        cable_areas_mm2: Overall cross-section of each cable, mm2, above 0.
        inside_area_mm2: Inside cross-section, mm2, above 0.

    Returns:
        Share, ratio; above 1 where they do not go in at all.

    Raises:
        InputOutOfRangeError: an area is not above 0.

    Source:
        On-Site Guide Appendix E, space factor.

    Example:
        >>> round(filled_share([154, 154], inside_area_mm2=2304), 3)
        0.134
    """
    require_above_zero(inside_area_mm2=inside_area_mm2)
    for area_mm2 in cable_areas_mm2:
        require_above_zero(area_mm2=area_mm2)
    return sum(cable_areas_mm2) / inside_area_mm2


def trunking_inside_area_mm2(width_mm: float, depth_mm: float, *, wall_mm: float = 1.0) -> float:
    """Return the inside cross-section of a trunking, mm2.

    Args:
        width_mm: Outside width, mm, above twice the wall.
        depth_mm: Outside depth, mm, above twice the wall.
        wall_mm: Thickness of the wall, mm, 0 or more.

    Returns:
        Area, mm2.

    Raises:
        InputOutOfRangeError: nothing is left inside.

    Source:
        Geometry; with 1 mm walls 45 % of it equals the trunking term of the On-Site Guide.

    Example:
        >>> trunking_inside_area_mm2(50, 50)
        2304.0
    """
    require_not_negative(wall_mm=wall_mm)
    width, depth = width_mm - 2.0 * wall_mm, depth_mm - 2.0 * wall_mm
    require_above_zero(inside_width_mm=width, inside_depth_mm=depth)
    return width * depth


def tray_width_mm(
    diameters_mm: Sequence[float],
    *,
    edge_mm: float,
    spare_fraction: float,
    gaps_mm: float = 0.0,
) -> float:
    """Return the least width of tray for one layer of cables, mm.

    W = (sum of diameters + sum of gaps + 2 edge) / (1 - spare)

    Args:
        diameters_mm: Overall diameter of each cable, mm, above 0.
        edge_mm: Clearance at each side, mm, 0 or more.
        spare_fraction: Share to leave free, ratio, 0 to under 1.
        gaps_mm: Sum of the gaps between cables, mm, 0 or more; 0 where they touch.

    Returns:
        Width, mm; not rounded to stock.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Common practice.

    Example:
        >>> round(tray_width_mm([23.4, 18.7, 18.7], edge_mm=10, spare_fraction=0.25), 1)
        107.7
    """
    require_not_negative(edge_mm=edge_mm, gaps_mm=gaps_mm, spare_fraction=spare_fraction)
    require_fraction(left=1.0 - spare_fraction)
    for diameter_mm in diameters_mm:
        require_above_zero(diameter_mm=diameter_mm)
    return (sum(diameters_mm) + gaps_mm + 2.0 * edge_mm) / (1.0 - spare_fraction)


def spaced_gaps_mm(diameters_mm: Sequence[float]) -> float:
    """Return the gaps that make neighbours "spaced", mm: one diameter of the larger of each two.

    Args:
        diameters_mm: Overall diameters in the order they lie, mm, above 0.

    Returns:
        Sum of the gaps, mm.

    Raises:
        InputOutOfRangeError: a diameter is not above 0.

    Source:
        BS 7671 Table 4C4, spaced condition (memory).

    Example:
        >>> spaced_gaps_mm([10, 20, 10])
        40
    """
    for diameter_mm in diameters_mm:
        require_above_zero(diameter_mm=diameter_mm)
    return sum(max(pair) for pair in itertools.pairwise(diameters_mm))


def stock_width_mm(least_mm: float, *, widths_mm: Sequence[float]) -> float:
    """Return the next stock width up, mm.

    Args:
        least_mm: Least width, mm, above 0.
        widths_mm: Stock widths, mm.

    Returns:
        Width, mm.

    Raises:
        InputOutOfRangeError: wider than the widest in stock.

    Source:
        Common practice.

    Example:
        >>> stock_width_mm(107.7, widths_mm=[50, 75, 100, 150, 225])
        150
    """
    require_above_zero(least_mm=least_mm)
    enough = [width for width in widths_mm if width >= least_mm - 1e-9]
    if not enough:
        raise InputOutOfRangeError(
            f"{least_mm:.0f} mm is wider than the widest in stock, {max(widths_mm):g} mm"
        )
    return min(enough)
