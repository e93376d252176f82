"""Earth-fault loop impedance: R1 + R2, armour as protective conductor, Zs and its limits."""

from __future__ import annotations

import math

from asfitted.calculate.ranges import require_above_zero, require_fraction, require_not_negative

# Steel wire raises its own a.c. resistance and reactance; the larger of the recalled handbook
# allowances (0.3 and 0.4 mohm/m) is taken.
ARMOUR_MAGNETIC_FACTOR = 1.1
ARMOUR_REACTANCE_MOHM_M = 0.4


def conductor_resistance_ohm(
    r20_mohm_m: float, *, length_m: float, temperature_factor: float = 1.0
) -> float:
    """Return the resistance of one conductor, ohm.

    R = r20 L f / 1000

    Args:
        r20_mohm_m: Resistance at 20 C, mohm/m, above 0.
        length_m: Length, m, 0 or more.
        temperature_factor: Resistance at working temperature over that at 20 C, ratio: 1.20 at
            70 C, 1.28 at 90 C, 1 for a cold measurement.

    Returns:
        Resistance, ohm.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        IEC 60228 resistances; BS 7671 Appendix 4 clause 6.1.

    Example:
        >>> round(conductor_resistance_ohm(7.41, length_m=30, temperature_factor=1.2), 4)
        0.2668
    """
    require_above_zero(r20_mohm_m=r20_mohm_m, temperature_factor=temperature_factor)
    require_not_negative(length_m=length_m)
    return r20_mohm_m * length_m * temperature_factor / 1000.0


def r1_plus_r2_ohm(
    *, r1_mohm_m: float, r2_mohm_m: float, length_m: float, temperature_factor: float
) -> float:
    """Return R1 + R2 of a radial circuit, ohm.

    R1 + R2 = (r1 + r2) L f / 1000

    Args:
        r1_mohm_m: Line conductor at 20 C, mohm/m, above 0.
        r2_mohm_m: Protective conductor at 20 C, mohm/m, above 0.
        length_m: Length, m, 0 or more.
        temperature_factor: Factor from 20 C to the assumed temperature, ratio, above 0.

    Returns:
        Resistance, ohm.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        On-Site Guide Appendix I.

    Example:
        >>> round(r1_plus_r2_ohm(
        ...     r1_mohm_m=3.08, r2_mohm_m=7.41, length_m=30, temperature_factor=1.2), 3)
        0.378
    """
    require_above_zero(r1_mohm_m=r1_mohm_m, r2_mohm_m=r2_mohm_m)
    return conductor_resistance_ohm(
        r1_mohm_m + r2_mohm_m, length_m=length_m, temperature_factor=temperature_factor
    )


def armour_impedance_ohm(
    armour_r20_mohm_m: float, *, length_m: float, temperature_factor: float
) -> complex:
    """Return the impedance of steel wire armour as protective conductor, complex ohm.

    R = 1.1 r20 L f / 1000 and X = 0.4 L / 1000: the armour's own magnetic effect raises its
    a.c. resistance by about a tenth and adds about 0.4 mohm/m.

    Args:
        armour_r20_mohm_m: Armour resistance at 20 C, mohm/m, above 0.
        length_m: Length, m, 0 or more.
        temperature_factor: Factor from 20 C, ratio, above 0: 1.18 at 60 C for 70 C cable, 1.27
            at 80 C for 90 C cable.

    Returns:
        Impedance, ohm; real part resistance, imaginary part reactance.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        BS 5467 armour resistance; magnetic allowance as handbooks give it (memory).

    Example:
        >>> z = armour_impedance_ohm(3.2, length_m=50, temperature_factor=1.27)
        >>> round(z.real, 4), round(z.imag, 3)
        (0.2235, 0.02)
    """
    resistance = ARMOUR_MAGNETIC_FACTOR * conductor_resistance_ohm(
        armour_r20_mohm_m, length_m=length_m, temperature_factor=temperature_factor
    )
    return complex(resistance, ARMOUR_REACTANCE_MOHM_M * length_m / 1000.0)


def parallel_ohm(first: complex, second: complex) -> complex:
    """Return two impedances in parallel, complex ohm, such as a copper core beside armour.

    Z = Z1 Z2 / (Z1 + Z2)

    Args:
        first: Impedance, complex ohm, not 0.
        second: Impedance, complex ohm, not 0.

    Returns:
        Impedance, complex ohm.

    Raises:
        InputOutOfRangeError: an impedance is 0.

    Source:
        Circuit theory.

    Example:
        >>> parallel_ohm(complex(2, 0), complex(2, 0))
        (1+0j)
    """
    require_above_zero(first=abs(first), second=abs(second))
    return first * second / (first + second)


def loop_impedance_ohm(external_ohm: float, *, r1_plus_r2_ohm: float) -> float:
    """Return Zs as the plain sum, ohm: on the safe side where reactance is not known.

    Zs = Ze + (R1 + R2)

    Args:
        external_ohm: Impedance upstream of the circuit, Ze or Zs of the board, ohm, 0 or more.
        r1_plus_r2_ohm: R1 + R2 at working temperature, ohm, 0 or more.

    Returns:
        Impedance, ohm.

    Raises:
        InputOutOfRangeError: an input is below 0.

    Source:
        BS 7671 regulation 411.4; On-Site Guide Appendix I.

    Example:
        >>> round(loop_impedance_ohm(0.15, r1_plus_r2_ohm=0.37764), 4)
        0.5276
    """
    require_not_negative(external_ohm=external_ohm, r1_plus_r2_ohm=r1_plus_r2_ohm)
    return external_ohm + r1_plus_r2_ohm


def loop_impedance_from_parts_ohm(*parts: complex) -> float:
    """Return the size of a loop whose parts are known as R + jX, ohm.

    Zs = sqrt((sum of R)^2 + (sum of X)^2)

    Args:
        parts: Impedance of each part of the loop, complex ohm.

    Returns:
        Impedance, ohm.

    Raises:
        InputOutOfRangeError: a part has a resistance below 0 ohm.

    Source:
        BS 7671 regulation 411.4; circuit theory.

    Example:
        >>> round(loop_impedance_from_parts_ohm(0.005 + 0.017j, 0.008 + 0.004j, 0.008 + 0.001j), 4)
        0.0304
    """
    for part in parts:
        require_not_negative(resistance_ohm=part.real)
    return abs(sum(parts, 0j))


def maximum_zs_ohm(ia_a: float, *, u0_v: float = 230.0, c_min: float = 0.95) -> float:
    """Return the greatest Zs, ohm; not rounded.

    Zs = Cmin U0 / Ia

    Args:
        ia_a: Current that disconnects in time, A, above 0.
        u0_v: Nominal voltage to earth, V, above 0.
        c_min: Voltage factor Cmin, ratio, above 0 to 1.

    Returns:
        Impedance, ohm.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        BS 7671 regulation 411.4.4.

    Example:
        >>> round(maximum_zs_ohm(5 * 32), 2)
        1.37
    """
    require_above_zero(ia_a=ia_a, u0_v=u0_v)
    require_fraction(c_min=c_min)
    return c_min * u0_v / ia_a


def measured_limit_ohm(maximum_zs: float, *, factor: float = 0.8) -> float:
    """Return the greatest Zs to accept from a meter with cold conductors, ohm.

    0.8 Zs(max), rounded down to 0.01 ohm. Not for a calculated Zs that already is hot.

    Args:
        maximum_zs: Greatest Zs, ohm, above 0, not rounded.
        factor: Share, ratio, above 0 to 1.

    Returns:
        Impedance, ohm.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        BS 7671 Appendix 3; Guidance Note 3 (rule of thumb).

    Example:
        >>> measured_limit_ohm(1.365625)
        1.09
    """
    require_above_zero(maximum_zs=maximum_zs)
    require_fraction(factor=factor)
    return math.floor(100.0 * factor * maximum_zs + 1e-9) / 100.0


def earth_fault_current_a(zs_ohm: float, *, u0_v: float = 230.0, c: float = 0.95) -> float:
    """Return the earth fault current, A: the least with Cmin, the greatest with Cmax.

    If = c U0 / Zs

    Args:
        zs_ohm: Earth-fault loop impedance, ohm, above 0.
        u0_v: Nominal voltage to earth, V, above 0.
        c: Voltage factor, ratio, above 0 to 1.1.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS 7671 regulation 411.4.4; IEC 60909-0 Table 1.

    Example:
        >>> round(earth_fault_current_a(1.15, c=1.0), 3)
        200.0
    """
    require_above_zero(zs_ohm=zs_ohm, u0_v=u0_v, c=c)
    return c * u0_v / zs_ohm


def greatest_length_m(available_ohm: float, *, ohm_per_m: float) -> float:
    """Return the longest circuit within an allowance of R1 + R2, m.

    L = Z / (ohm per metre)

    Args:
        available_ohm: Allowance, ohm, above 0.
        ohm_per_m: R1 + R2 per metre at working temperature, ohm/m, above 0.

    Returns:
        Length, m; not rounded.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS 7671 regulation 411.4, solved for length.

    Example:
        >>> round(greatest_length_m(0.8, ohm_per_m=0.018), 1)
        44.4
    """
    require_above_zero(available_ohm=available_ohm, ohm_per_m=ohm_per_m)
    return available_ohm / ohm_per_m
