"""Prospective fault current from the impedances between source and fault."""

from __future__ import annotations

import math

from asfitted.calculate.ranges import require_above_zero, require_not_negative
from asfitted.errors import InputOutOfRangeError

C_MAX_LV = 1.10
C_MIN_LV = 0.95
_SQRT3 = math.sqrt(3.0)


def transformer_current_a(rating_kva: float, *, line_voltage_v: float) -> float:
    """Return the rated secondary current of a three-phase transformer, A.

    In = 1000 S / (sqrt(3) U20)

    Args:
        rating_kva: Rated power, kVA, above 0.
        line_voltage_v: No-load secondary voltage, V, above 0.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        IEC 60076-1.

    Example:
        >>> round(transformer_current_a(400, line_voltage_v=420))
        550
    """
    require_above_zero(rating_kva=rating_kva, line_voltage_v=line_voltage_v)
    return 1000.0 * rating_kva / (_SQRT3 * line_voltage_v)


def transformer_impedance_ohm(
    rating_kva: float, *, line_voltage_v: float, uk_percent: float, copper_loss_w: float = 0.0
) -> complex:
    """Return a transformer's impedance per phase on its secondary side, complex ohm.

    Z = uk/100 U^2 / S; R = Pk U^2 / S^2; X = sqrt(Z^2 - R^2). Pure reactance where no loss is
    given.

    Args:
        rating_kva: Rated power, kVA, above 0.
        line_voltage_v: Secondary voltage, V, above 0.
        uk_percent: Short-circuit voltage, %, above 0.
        copper_loss_w: Load loss at rated current, W, 0 or more.

    Returns:
        Impedance, complex ohm.

    Raises:
        InputOutOfRangeError: an input lies outside its range, or the loss is more than uk allows.

    Source:
        IEC 60909-0, 6.3; IEC 60076-1.

    Example:
        >>> round(1000 * abs(transformer_impedance_ohm(
        ...     2000, line_voltage_v=380, uk_percent=5.75)), 4)
        4.1515
    """
    require_above_zero(rating_kva=rating_kva, line_voltage_v=line_voltage_v, uk_percent=uk_percent)
    require_not_negative(copper_loss_w=copper_loss_w)
    rating_va = 1000.0 * rating_kva
    size = uk_percent / 100.0 * line_voltage_v**2 / rating_va
    resistance = copper_loss_w * line_voltage_v**2 / rating_va**2
    if resistance > size:
        raise InputOutOfRangeError(f"copper_loss_w {copper_loss_w} W is more than uk allows")
    return complex(resistance, math.sqrt(size**2 - resistance**2))


def source_impedance_from_power_ohm(
    power_mva: float, *, line_voltage_v: float, x_over_r: float = math.inf, c: float = 1.0
) -> complex:
    """Return a network's impedance per phase from its short-circuit power, complex ohm.

    Z = c U^2 / S, referred to the voltage given; R = Z / sqrt(1 + (X/R)^2).

    Args:
        power_mva: Short-circuit power, MVA, above 0.
        line_voltage_v: Voltage to refer it to, V, above 0.
        x_over_r: Ratio X/R, 0 or more; infinite for pure reactance.
        c: Voltage factor, ratio, above 0.

    Returns:
        Impedance, complex ohm.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        IEC 60909-0, 6.2.

    Example:
        >>> z = source_impedance_from_power_ohm(100, line_voltage_v=230, x_over_r=10)
        >>> round(abs(z), 6), round(z.real, 7)
        (0.000529, 5.26e-05)
    """
    require_above_zero(power_mva=power_mva, line_voltage_v=line_voltage_v, c=c)
    require_not_negative(x_over_r=x_over_r)
    return _split(c * line_voltage_v**2 / (1e6 * power_mva), x_over_r)


def source_impedance_from_current_ohm(
    fault_current_a: float, *, voltage_v: float, x_over_r: float = 0.0, c: float = 1.0
) -> complex:
    """Return the impedance behind a declared or measured fault current, complex ohm.

    Z = c U / I. For a line to neutral current the voltage is U0 and the impedance is that of
    the whole loop; for a three-phase current it is UL / sqrt(3) and that of one phase. Never
    derive the highest fault current from the highest declared Ze.

    Args:
        fault_current_a: Prospective fault current, A, above 0.
        voltage_v: Voltage that drives it, V, above 0.
        x_over_r: Ratio X/R, 0 or more; 0 (pure resistance) adds up with cables to the full.
        c: Voltage factor to be used at the fault too, ratio, above 0.

    Returns:
        Impedance, complex ohm.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        BS 7671 regulation 313.1; IEC 60909-0.

    Example:
        >>> round(abs(source_impedance_from_current_ohm(16000, voltage_v=230)), 6)
        0.014375
    """
    require_above_zero(fault_current_a=fault_current_a, voltage_v=voltage_v, c=c)
    require_not_negative(x_over_r=x_over_r)
    return _split(c * voltage_v / fault_current_a, x_over_r)


def _split(size_ohm: float, x_over_r: float) -> complex:
    if math.isinf(x_over_r):
        return complex(0.0, size_ohm)
    resistance = size_ohm / math.sqrt(1.0 + x_over_r**2)
    return complex(resistance, resistance * x_over_r)


def cable_impedance_ohm(
    r20_mohm_m: float,
    *,
    length_m: float,
    x_mohm_m: float = 0.0,
    temperature_factor: float = 1.0,
    in_parallel: int = 1,
) -> complex:
    """Return the impedance of one conductor of a cable, complex ohm.

    Z = (r20 f + j x) L / (1000 n). Cold (f = 1) for the highest fault current, hot for the
    lowest.

    Args:
        r20_mohm_m: Resistance at 20 C, mohm/m, above 0.
        length_m: Length, m, 0 or more.
        x_mohm_m: Reactance, mohm/m, 0 or more; may be left out up to 16 mm2.
        temperature_factor: Resistance over that at 20 C, ratio, above 0.
        in_parallel: Number of equal cables in parallel, 1 or more.

    Returns:
        Impedance, complex ohm.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        IEC 60909-0, 6.4.

    Example:
        >>> cable_impedance_ohm(0.1, length_m=20, x_mohm_m=0.08)
        (0.002+0.0016j)
    """
    require_above_zero(
        r20_mohm_m=r20_mohm_m, temperature_factor=temperature_factor, in_parallel=in_parallel
    )
    require_not_negative(length_m=length_m, x_mohm_m=x_mohm_m)
    per_m = complex(r20_mohm_m * temperature_factor, x_mohm_m)
    return per_m * length_m / (1000.0 * in_parallel)


def three_phase_fault_a(
    impedance_ohm: complex, *, line_voltage_v: float = 400.0, c: float = C_MAX_LV
) -> float:
    """Return the three-phase fault current, A.

    Ik3 = c U / (sqrt(3) |Z1|)

    Args:
        impedance_ohm: Sum of the impedances of one phase, complex ohm, not 0.
        line_voltage_v: Line to line voltage, V, above 0.
        c: Voltage factor, ratio, above 0: 1.10 for the highest, 0.95 for the lowest current.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        IEC 60909-0, 7.2 and Table 1.

    Example:
        >>> round(three_phase_fault_a(complex(0, 0.0146969), c=1.0))
        15714
    """
    require_above_zero(impedance_ohm=abs(impedance_ohm), line_voltage_v=line_voltage_v, c=c)
    return c * line_voltage_v / (_SQRT3 * abs(impedance_ohm))


def line_line_fault_a(
    impedance_ohm: complex, *, line_voltage_v: float = 400.0, c: float = C_MAX_LV
) -> float:
    """Return the line to line fault current, A.

    Ik2 = c U / (2 |Z1|), that is sqrt(3)/2 of the three-phase current.

    Args:
        impedance_ohm: Sum of the impedances of one phase, complex ohm, not 0.
        line_voltage_v: Line to line voltage, V, above 0.
        c: Voltage factor, ratio, above 0.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        IEC 60909-0, 7.3.

    Example:
        >>> round(line_line_fault_a(0.02 + 0j, c=1.0))
        10000
    """
    require_above_zero(impedance_ohm=abs(impedance_ohm), line_voltage_v=line_voltage_v, c=c)
    return c * line_voltage_v / (2.0 * abs(impedance_ohm))


def loop_fault_a(
    line_ohm: complex, *, return_ohm: complex, u0_v: float = 230.0, c: float = C_MAX_LV
) -> float:
    """Return the line to neutral or line to earth fault current, A.

    If = c U0 / |Zline + Zreturn|; equal to sqrt(3) c U / |2 Z1 + Z0|.

    Args:
        line_ohm: Impedance of the line from the source on, complex ohm.
        return_ohm: Impedance of the neutral, or of protective conductor and earth, complex ohm.
        u0_v: Line to neutral voltage, V, above 0.
        c: Voltage factor, ratio, above 0: 1.10 for the highest, 0.95 for the lowest current.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: the loop has no impedance, or an input is not above 0.

    Source:
        IEC 60909-0, 7.4; BS 7671 regulations 411.4.4 and 434.1.

    Example:
        >>> round(loop_fault_a(0.1 + 0j, return_ohm=0.13 + 0j, c=1.0))
        1000
    """
    require_above_zero(loop_ohm=abs(line_ohm + return_ohm), u0_v=u0_v, c=c)
    return c * u0_v / abs(line_ohm + return_ohm)


def peak_current_a(fault_a: float, *, r_over_x: float) -> float:
    """Return the peak of the first half-wave, A.

    ip = kappa sqrt(2) Ik, kappa = 1.02 + 0.98 exp(-3 R/X)

    Args:
        fault_a: Symmetrical fault current, A, above 0.
        r_over_x: Ratio R/X of the whole path, 0 or more.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        IEC 60909-0, 8.1.

    Example:
        >>> round(peak_current_a(10000, r_over_x=0.5))
        17517
    """
    require_above_zero(fault_a=fault_a)
    require_not_negative(r_over_x=r_over_x)
    return (1.02 + 0.98 * math.exp(-3.0 * r_over_x)) * math.sqrt(2.0) * fault_a
