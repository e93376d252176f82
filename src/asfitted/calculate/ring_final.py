"""Ring final circuits: the quarter rule, lengths from readings, and how legs share the load."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.ranges import require_above_zero, require_not_negative
from asfitted.errors import InputOutOfRangeError

if TYPE_CHECKING:
    from collections.abc import Sequence


def cross_connected_ohm(first_end_to_end_ohm: float, *, second_end_to_end_ohm: float) -> float:
    """Return the reading to expect at each socket of a cross-connected ring, ohm.

    R1 + R2 = (r1 + r2) / 4

    Args:
        first_end_to_end_ohm: End to end resistance of the line, r1, ohm, above 0.
        second_end_to_end_ohm: End to end resistance of the protective conductor r2 or the
            neutral rn, ohm, above 0.

    Returns:
        Resistance, ohm.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS 7671 regulation 643.2.1; Guidance Note 3, ring final circuit test.

    Example:
        >>> cross_connected_ohm(1.15, second_end_to_end_ohm=1.8)
        0.7375
    """
    require_above_zero(first=first_end_to_end_ohm, second=second_end_to_end_ohm)
    return (first_end_to_end_ohm + second_end_to_end_ohm) / 4.0


def ring_r1_plus_r2_ohm(
    *, r1_mohm_m: float, r2_mohm_m: float, ring_length_m: float, temperature_factor: float
) -> float:
    """Return R1 + R2 at the middle of a ring, ohm.

    R1 + R2 = (r1 + r2) L f / 4000

    Args:
        r1_mohm_m: Line conductor at 20 C, mohm/m, above 0.
        r2_mohm_m: Protective conductor at 20 C, mohm/m, above 0.
        ring_length_m: Length from board round to board, m, above 0.
        temperature_factor: Factor from 20 C to working temperature, ratio, above 0.

    Returns:
        Resistance, ohm.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        On-Site Guide Appendix I; quarter rule of Guidance Note 3.

    Example:
        >>> round(ring_r1_plus_r2_ohm(
        ...     r1_mohm_m=7.41, r2_mohm_m=12.1, ring_length_m=60, temperature_factor=1.2), 3)
        0.351
    """
    require_above_zero(
        r1_mohm_m=r1_mohm_m,
        r2_mohm_m=r2_mohm_m,
        ring_length_m=ring_length_m,
        temperature_factor=temperature_factor,
    )
    return (r1_mohm_m + r2_mohm_m) * ring_length_m * temperature_factor / 4000.0


def length_from_reading_m(end_to_end_ohm: float, *, mohm_m: float) -> float:
    """Return the length of cable from an end to end reading, m.

    L = 1000 R / r

    Args:
        end_to_end_ohm: Reading, ohm, above 0; the sum of two readings with the sum of two r.
        mohm_m: Resistance per metre at the temperature of the reading, mohm/m, above 0.

    Returns:
        Length, m.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        IEC 60228 resistances.

    Example:
        >>> round(length_from_reading_m(1.15, mohm_m=7.41), 1)
        155.2
    """
    require_above_zero(end_to_end_ohm=end_to_end_ohm, mohm_m=mohm_m)
    return 1000.0 * end_to_end_ohm / mohm_m


def leg_currents_a(
    loads: Sequence[tuple[float, float]], *, ring_length_m: float
) -> tuple[float, float]:
    """Return the currents at the two ends of a ring, A.

    I1 = sum(I (L - d)) / L and I2 = sum(I d) / L, d measured from end 1: a load near one end is
    carried mostly by the short leg.

    Args:
        loads: Pairs of distance from end 1, m, 0 to the ring length, and load, A, 0 or more.
        ring_length_m: Length from board round to board, m, above 0.

    Returns:
        Currents at end 1 and end 2, A.

    Raises:
        InputOutOfRangeError: a load lies outside the ring or is below 0.

    Source:
        Moments of current on a ring of one size; BS 7671 regulation 433.1.204 limits the cable.

    Example:
        >>> leg_currents_a([(15, 16), (45, 16)], ring_length_m=60)
        (16.0, 16.0)
    """
    require_above_zero(ring_length_m=ring_length_m)
    far_a = 0.0
    total_a = 0.0
    for distance_m, load_a in loads:
        require_not_negative(distance_m=distance_m, load_a=load_a)
        if distance_m > ring_length_m:
            raise InputOutOfRangeError(f"a load at {distance_m} m lies beyond the ring's end")
        total_a += load_a
        far_a += load_a * distance_m / ring_length_m
    return total_a - far_a, far_a
