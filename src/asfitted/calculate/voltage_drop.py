"""Voltage drop of one length of cable."""

from __future__ import annotations

import math

from asfitted.calculate.ranges import require_above_zero, require_fraction, require_not_negative


def drop_per_ampere_metre(
    *, r_mv_a_m: float, x_mv_a_m: float, power_factor: float, temperature_factor: float = 1.0
) -> float:
    """Return the drop per ampere and metre at a power factor, mV/A/m.

    mV/A/m = Ct r cos phi + x sin phi; with x = 0 up to 16 mm2. At a power factor not known, use
    the tabulated z instead.

    Args:
        r_mv_a_m: Tabulated resistive part, mV/A/m, above 0.
        x_mv_a_m: Tabulated reactive part, mV/A/m, 0 or more.
        power_factor: Power factor of the load, lagging, ratio, above 0 to 1.
        temperature_factor: Ct for a cable not fully loaded, ratio, above 0 to 1.

    Returns:
        Drop, mV/A/m.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        BS 7671 Appendix 4, clauses 6.1 and 6.2.

    Example:
        >>> round(drop_per_ampere_metre(r_mv_a_m=1.6, x_mv_a_m=0.14, power_factor=0.8), 3)
        1.364
    """
    require_above_zero(r_mv_a_m=r_mv_a_m)
    require_not_negative(x_mv_a_m=x_mv_a_m)
    require_fraction(power_factor=power_factor, temperature_factor=temperature_factor)
    sine = math.sqrt(1.0 - power_factor**2)
    return temperature_factor * r_mv_a_m * power_factor + x_mv_a_m * sine


def voltage_drop_v(mv_per_a_m: float, *, current_a: float, length_m: float) -> float:
    """Return the voltage drop, V; line to line where the table's column is three-phase.

    Vd = (mV/A/m) Ib L / 1000

    Args:
        mv_per_a_m: Drop per ampere and metre, mV/A/m, above 0.
        current_a: Design current Ib, A, 0 or more.
        length_m: Length of the run, m, 0 or more.

    Returns:
        Drop, V.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        BS 7671 Appendix 4, clause 6.

    Example:
        >>> round(voltage_drop_v(11, current_a=25, length_m=16), 2)
        4.4
    """
    require_above_zero(mv_per_a_m=mv_per_a_m)
    require_not_negative(current_a=current_a, length_m=length_m)
    return mv_per_a_m * current_a * length_m / 1000.0


def temperature_factor_ct(
    *, conductor_c: float, ca: float, cg: float, current_a: float, tabulated_a: float
) -> float:
    """Return Ct, the factor on r for a cable that carries less than its capacity.

    Ct = (230 + tp - (Ca^2 Cg^2 - Ib^2 / It^2)(tp - 30)) / (230 + tp), at most 1.

    Args:
        conductor_c: Highest conductor temperature tp, C, above 30.
        ca: Ambient temperature factor, ratio, above 0 to 1.2.
        cg: Grouping factor, ratio, above 0 to 1.
        current_a: Design current Ib, A, 0 or more.
        tabulated_a: Tabulated capacity It of the cable, A, above 0.

    Returns:
        Ct, ratio, never above 1.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        BS 7671 Appendix 4, clause 6.1; for ambient from 30 C up.

    Example:
        >>> round(temperature_factor_ct(
        ...     conductor_c=70, ca=1, cg=1, current_a=20, tabulated_a=27), 3)
        0.94
    """
    require_above_zero(over_30_c=conductor_c - 30.0, ca=ca, tabulated_a=tabulated_a)
    require_fraction(cg=cg)
    require_not_negative(current_a=current_a)
    unused = ca**2 * cg**2 - (current_a / tabulated_a) ** 2
    return min(1.0, (230.0 + conductor_c - unused * (conductor_c - 30.0)) / (230.0 + conductor_c))


def ring_voltage_drop_v(mv_per_a_m: float, *, current_a: float, ring_length_m: float) -> float:
    """Return the drop at the middle of a ring with the whole load there, V.

    Vd = (mV/A/m) Ib L / 4000, L being end to end round the ring.

    Args:
        mv_per_a_m: Drop per ampere and metre of the cable, mV/A/m, above 0.
        current_a: Load at the middle of the ring, A, 0 or more.
        ring_length_m: Length of cable from board round to board, m, 0 or more.

    Returns:
        Drop, V.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Two halves in parallel (common practice); BS 7671 Appendix 4, clause 6.

    Example:
        >>> round(ring_voltage_drop_v(18, current_a=32, ring_length_m=40), 2)
        5.76
    """
    return voltage_drop_v(mv_per_a_m, current_a=current_a, length_m=ring_length_m) / 4.0


def line_to_neutral_v(line_to_line_v: float) -> float:
    """Return the line to neutral drop that goes with a three-phase drop, V.

    Vd(LN) = Vd(LL) / sqrt(3), to add a three-phase sub-main to a single-phase final circuit.

    Args:
        line_to_line_v: Drop between lines, V, 0 or more.

    Returns:
        Drop, V.

    Raises:
        InputOutOfRangeError: the drop is below 0.

    Source:
        Balanced three-phase system.

    Example:
        >>> round(line_to_neutral_v(4.125), 2)
        2.38
    """
    require_not_negative(line_to_line_v=line_to_line_v)
    return line_to_line_v / math.sqrt(3.0)


def drop_percent(drop_v: float, *, nominal_v: float) -> float:
    """Return a drop as a share of the nominal voltage, %.

    Args:
        drop_v: Drop, V, 0 or more.
        nominal_v: Voltage it is measured against, V, above 0: 400 between lines, 230 to neutral.

    Returns:
        Drop, %.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        BS 7671 Appendix 4, clause 6.4 and Table 4Ab.

    Example:
        >>> round(drop_percent(4.4, nominal_v=240), 2)
        1.83
    """
    require_not_negative(drop_v=drop_v)
    require_above_zero(nominal_v=nominal_v)
    return 100.0 * drop_v / nominal_v


def greatest_length_m(mv_per_a_m: float, *, current_a: float, limit_v: float) -> float:
    """Return the longest run within a limit of drop, m.

    L = 1000 Vd / ((mV/A/m) Ib)

    Args:
        mv_per_a_m: Drop per ampere and metre, mV/A/m, above 0.
        current_a: Design current Ib, A, above 0.
        limit_v: Greatest drop, V, above 0.

    Returns:
        Length, m; not rounded.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS 7671 Appendix 4, clause 6, solved for length.

    Example:
        >>> round(greatest_length_m(11, current_a=32, limit_v=11.5), 1)
        32.7
    """
    require_above_zero(mv_per_a_m=mv_per_a_m, current_a=current_a, limit_v=limit_v)
    return 1000.0 * limit_v / (mv_per_a_m * current_a)


def greatest_mv_per_a_m(limit_v: float, *, current_a: float, length_m: float) -> float:
    """Return the greatest mV/A/m within a limit of drop, to choose a size by.

    Args:
        limit_v: Greatest drop, V, above 0.
        current_a: Design current Ib, A, above 0.
        length_m: Length of the run, m, above 0.

    Returns:
        Drop per ampere and metre, mV/A/m.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS 7671 Appendix 4, clause 6, solved for mV/A/m.

    Example:
        >>> round(greatest_mv_per_a_m(10.5, current_a=100, length_m=150), 3)
        0.7
    """
    require_above_zero(limit_v=limit_v, current_a=current_a, length_m=length_m)
    return 1000.0 * limit_v / (current_a * length_m)
