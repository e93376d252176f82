"""Capacity of a cable where it runs: what the table must give, and what is left of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.ranges import require_above_zero
from asfitted.errors import InputOutOfRangeError

if TYPE_CHECKING:
    from collections.abc import Sequence

_GREATEST_FACTOR = 2.0


def combined_factor(
    *,
    ca: float = 1.0,
    cg: float = 1.0,
    ci: float = 1.0,
    cs: float = 1.0,
    cd: float = 1.0,
    cc: float = 1.0,
    ch: float = 1.0,
) -> float:
    """Return the product of the rating factors.

    C = Ca Cg Ci Cs Cd Cc Ch

    Args:
        ca: Ambient temperature factor, ratio, above 0 to 2.
        cg: Grouping factor, ratio, above 0 to 2.
        ci: Thermal insulation factor, ratio, above 0 to 2.
        cs: Soil resistivity factor, ratio, above 0 to 2.
        cd: Depth of laying factor, ratio, above 0 to 2.
        cc: Protective device and buried cable factor, ratio, above 0 to 2.
        ch: Third harmonic factor, ratio, above 0 to 2.

    Returns:
        Product, ratio.

    Raises:
        InputOutOfRangeError: a factor lies outside its range.

    Source:
        BS 7671 Appendix 4, clauses 5.1 and 5.5.

    Example:
        >>> round(combined_factor(ca=0.91, cg=0.75), 4)
        0.6825
    """
    product = 1.0
    named = {"ca": ca, "cg": cg, "ci": ci, "cs": cs, "cd": cd, "cc": cc, "ch": ch}
    for name, factor in named.items():
        if not 0 < factor <= _GREATEST_FACTOR:
            raise InputOutOfRangeError(f"{name} must be above 0 and at most 2, not {factor}")
        product *= factor
    return product


def required_capacity_a(current_a: float, *, factor: float) -> float:
    """Return the least tabulated capacity It, A.

    It >= In / C where the cable is protected against overload, Ib / C (with Cc = 1) where it
    need not be.

    Args:
        current_a: Rated current In of the device, or design current Ib, A, above 0.
        factor: Product of the rating factors, ratio, above 0.

    Returns:
        Least tabulated capacity, A; not rounded.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS 7671 Appendix 4, clauses 5.1 and 5.2.

    Example:
        >>> round(required_capacity_a(32, factor=0.94), 2)
        34.04
    """
    require_above_zero(current_a=current_a, factor=factor)
    return current_a / factor


def corrected_capacity_a(tabulated_a: float, *, factor: float) -> float:
    """Return the capacity Iz of the cable where it runs, A.

    Iz = It C. Leave Cc out of C unless the device or the burial calls for it.

    Args:
        tabulated_a: Tabulated capacity It, A, above 0.
        factor: Product of the rating factors, ratio, above 0.

    Returns:
        Corrected capacity, A; not rounded.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS 7671 Appendix 4, clause 5.

    Example:
        >>> round(corrected_capacity_a(94, factor=0.96 * 0.88), 2)
        79.41
    """
    require_above_zero(tabulated_a=tabulated_a, factor=factor)
    return tabulated_a * factor


def governing_length(capacities_a: Sequence[float]) -> int:
    """Return the position of the length of a run that has the least capacity.

    Args:
        capacities_a: Corrected capacity of each length of the run, A; at least one; above 0.

    Returns:
        Index of the least; the first of equals.

    Raises:
        InputOutOfRangeError: no capacity is given, or one is not above 0 A.

    Source:
        BS 7671 regulation 523.8: the least favourable part of the route governs.

    Example:
        >>> governing_length([94.0, 61.5, 75.0])
        1
    """
    if not capacities_a:
        raise InputOutOfRangeError("capacities_a must hold at least one length")
    for capacity_a in capacities_a:
        require_above_zero(capacity_a=capacity_a)
    return min(range(len(capacities_a)), key=lambda index: capacities_a[index])


def smallest_size(required_a: float, *, capacities_a: Sequence[tuple[float, float]]) -> float:
    """Return the smallest size whose tabulated capacity is enough, mm2.

    Args:
        required_a: Least tabulated capacity It, A, above 0; compared unrounded.
        capacities_a: Pairs of size, mm2, and tabulated capacity, A.

    Returns:
        Size, mm2.

    Raises:
        InputOutOfRangeError: no size is enough; names the largest capacity.

    Source:
        BS 7671 Appendix 4, clause 5.

    Example:
        >>> smallest_size(34.04, capacities_a=[(4, 26), (6, 34), (10, 46)])
        10
    """
    require_above_zero(required_a=required_a)
    enough = [size for size, capacity in capacities_a if capacity >= required_a]
    if not enough:
        largest = max(capacity for _, capacity in capacities_a)
        raise InputOutOfRangeError(f"{required_a:.2f} A is more than the largest, {largest:g} A")
    return min(enough)
