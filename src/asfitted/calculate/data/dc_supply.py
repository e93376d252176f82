"""Extra-low voltage d.c. supply of cameras over their cable."""

from __future__ import annotations

import math

from asfitted.calculate.ranges import require_above_zero, require_not_negative
from asfitted.errors import InputOutOfRangeError


def loop_resistance_ohm(
    ohm_per_100m: float, *, length_m: float, conductors_each_way: int = 1
) -> float:
    """Return the resistance out and back, ohm.

    R = 2 r L / (100 n)

    Args:
        ohm_per_100m: Resistance of one conductor, ohm/100 m, above 0.
        length_m: Length one way, m, 0 or more.
        conductors_each_way: Conductors in parallel each way, 1 or more.

    Returns:
        Resistance, ohm.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Ohm's law.

    Example:
        >>> loop_resistance_ohm(2.6, length_m=50)
        2.6
    """
    require_above_zero(ohm_per_100m=ohm_per_100m, conductors_each_way=conductors_each_way)
    require_not_negative(length_m=length_m)
    return 2.0 * ohm_per_100m * length_m / (100.0 * conductors_each_way)


def load_current_a(power_w: float, *, least_v: float = 10.8) -> float:
    """Return the current to allow for a constant-power load, A.

    I = P / Vmin: it draws most at the lowest voltage it works at.

    Args:
        power_w: Greatest load, infra-red on, W, above 0.
        least_v: Lowest working voltage, V, above 0.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        Ohm's law; 12 V less 10 % window of a maker's page on camera supplies.

    Example:
        >>> round(load_current_a(5), 3)
        0.463
    """
    require_above_zero(power_w=power_w, least_v=least_v)
    return power_w / least_v


def voltage_at_load_v(supply_v: float, *, current_a: float, loop_ohm: float) -> float:
    """Return the voltage at the far end, V.

    V = Vsupply - I R

    Args:
        supply_v: Voltage of the supply, V, above 0.
        current_a: Current, A, 0 or more.
        loop_ohm: Resistance out and back, ohm, 0 or more.

    Returns:
        Voltage, V.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Ohm's law.

    Example:
        >>> round(voltage_at_load_v(12, current_a=1, loop_ohm=0.34), 2)
        11.66
    """
    require_above_zero(supply_v=supply_v)
    require_not_negative(current_a=current_a, loop_ohm=loop_ohm)
    return supply_v - current_a * loop_ohm


def constant_power_voltage_v(supply_v: float, *, power_w: float, loop_ohm: float) -> float:
    """Return the voltage at which a constant-power load settles, V.

    V = (Vs + sqrt(Vs^2 - 4 P R)) / 2: the exact answer; the method with the lowest voltage is
    on the safe side of it.

    Args:
        supply_v: Voltage of the supply, V, above 0.
        power_w: Load, W, 0 or more.
        loop_ohm: Resistance out and back, ohm, 0 or more.

    Returns:
        Voltage, V.

    Raises:
        InputOutOfRangeError: the cable cannot carry that power at all.

    Source:
        Ohm's law, solved for the higher voltage.

    Example:
        >>> round(constant_power_voltage_v(12, power_w=5, loop_ohm=2.6), 3)
        10.796
    """
    require_above_zero(supply_v=supply_v)
    require_not_negative(power_w=power_w, loop_ohm=loop_ohm)
    under_root = supply_v**2 - 4.0 * power_w * loop_ohm
    if under_root < 0:
        raise InputOutOfRangeError(
            f"{power_w:g} W cannot be carried over {loop_ohm:g} ohm from {supply_v:g} V"
        )
    return (supply_v + math.sqrt(under_root)) / 2.0


def greatest_length_m(
    supply_v: float,
    *,
    least_v: float,
    current_a: float,
    ohm_per_100m: float,
    conductors_each_way: int = 1,
) -> float:
    """Return the longest run that keeps the load within its window, m.

    L = 100 n (Vsupply - Vmin) / (2 r I)

    Args:
        supply_v: Voltage of the supply, V, above ``least_v``.
        least_v: Lowest working voltage, V, above 0.
        current_a: Current, A, above 0.
        ohm_per_100m: Resistance of one conductor, ohm/100 m, above 0.
        conductors_each_way: Conductors in parallel each way, 1 or more.

    Returns:
        Length one way, m; not rounded.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Ohm's law, solved for length.

    Example:
        >>> round(greatest_length_m(12, least_v=10.8, current_a=0.463, ohm_per_100m=2.6), 1)
        49.8
    """
    require_above_zero(
        allowance_v=supply_v - least_v,
        least_v=least_v,
        current_a=current_a,
        ohm_per_100m=ohm_per_100m,
        conductors_each_way=conductors_each_way,
    )
    return 100.0 * conductors_each_way * (supply_v - least_v) / (2.0 * ohm_per_100m * current_a)


def supply_rating_a(load_currents_a: tuple[float, ...], *, headroom: float = 1.25) -> float:
    """Return the least rated current of a shared d.c. supply, A.

    I = headroom x sum of the loads

    Args:
        load_currents_a: Current of each load, infra-red on, A, 0 or more.
        headroom: Factor, ratio, 1 or more.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Common practice.

    Example:
        >>> supply_rating_a((0.5, 0.5, 0.75))
        2.1875
    """
    require_above_zero(headroom=headroom)
    for load_a in load_currents_a:
        require_not_negative(load_a=load_a)
    return headroom * sum(load_currents_a)
