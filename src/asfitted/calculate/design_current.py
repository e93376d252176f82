"""Design current Ib from power."""

from __future__ import annotations

import math

from asfitted.calculate.ranges import require_above_zero, require_fraction, require_not_negative


def single_phase_current_a(
    power_kw: float, *, power_factor: float = 1.0, voltage_v: float = 230.0
) -> float:
    """Return the current of a single-phase load, A.

    Ib = 1000 P / (U cos phi)

    Args:
        power_kw: Electrical input power, kW, 0 or more.
        power_factor: Power factor, ratio, above 0 to 1.
        voltage_v: Line to neutral voltage, V, above 0.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Definition of active power; BS 7671 Part 2, design current.

    Example:
        >>> round(single_phase_current_a(6), 2)
        26.09
    """
    require_not_negative(power_kw=power_kw)
    require_fraction(power_factor=power_factor)
    require_above_zero(voltage_v=voltage_v)
    return 1000.0 * power_kw / (voltage_v * power_factor)


def three_phase_current_a(
    power_kw: float, *, power_factor: float = 1.0, line_voltage_v: float = 400.0
) -> float:
    """Return the line current of a balanced three-phase load, A.

    Ib = 1000 P / (sqrt(3) UL cos phi)

    Args:
        power_kw: Electrical input power, kW, 0 or more.
        power_factor: Power factor, ratio, above 0 to 1.
        line_voltage_v: Line to line voltage, V, above 0.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Definition of active power; BS 7671 Part 2, design current.

    Example:
        >>> round(three_phase_current_a(16), 1)
        23.1
    """
    require_not_negative(power_kw=power_kw)
    require_fraction(power_factor=power_factor)
    require_above_zero(line_voltage_v=line_voltage_v)
    return 1000.0 * power_kw / (math.sqrt(3.0) * line_voltage_v * power_factor)


def apparent_power_current_a(
    power_kva: float, *, line_voltage_v: float = 400.0, phases: int = 3
) -> float:
    """Return the line current of an apparent power, A.

    I = 1000 S / (sqrt(3) UL) for three phases, 1000 S / U for one.

    Args:
        power_kva: Apparent power, kVA, 0 or more.
        line_voltage_v: Line to line voltage for 3 phases, line to neutral for 1, V, above 0.
        phases: 1 or 3.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Definition of apparent power.

    Example:
        >>> round(apparent_power_current_a(69), 1)
        99.6
    """
    require_not_negative(power_kva=power_kva)
    require_above_zero(line_voltage_v=line_voltage_v)
    return 1000.0 * power_kva / (line_voltage_v * (math.sqrt(3.0) if phases == 3 else 1.0))
