"""The adiabatic equation: conductor size, withstand energy and time under fault."""

from __future__ import annotations

import math

from asfitted.calculate.ranges import require_above_zero


def minimum_csa_mm2(fault_a: float, *, time_s: float, k: float) -> float:
    """Return the least cross-section that stands a fault, mm2; not rounded to a standard size.

    S = sqrt(I^2 t) / k

    Args:
        fault_a: Fault current, A, above 0.
        time_s: Disconnection time, s, 0.1 to 5. Under 0.1 s use the let-through energy.
        k: Factor of the conductor, A s^0.5 / mm2, above 0.

    Returns:
        Cross-section, mm2.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS 7671 regulation 543.1.3.

    Example:
        >>> round(minimum_csa_mm2(200, time_s=0.4, k=115), 2)
        1.1
    """
    require_above_zero(fault_a=fault_a, time_s=time_s, k=k)
    return fault_a * math.sqrt(time_s) / k


def minimum_csa_for_energy_mm2(energy_a2s: float, *, k: float) -> float:
    """Return the least cross-section that stands a let-through energy, mm2.

    S = sqrt(I2t) / k

    Args:
        energy_a2s: Let-through energy of the device, A2s, above 0.
        k: Factor of the conductor, A s^0.5 / mm2, above 0.

    Returns:
        Cross-section, mm2.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS 7671 regulations 434.5.2 and 543.1.3.

    Example:
        >>> round(minimum_csa_for_energy_mm2(45000, k=115), 2)
        1.84
    """
    require_above_zero(energy_a2s=energy_a2s, k=k)
    return math.sqrt(energy_a2s) / k


def withstand_energy_a2s(csa_mm2: float, *, k: float) -> float:
    """Return the energy a conductor stands, A2s.

    k^2 S^2

    Args:
        csa_mm2: Cross-section, mm2, above 0.
        k: Factor of the conductor, A s^0.5 / mm2, above 0.

    Returns:
        Energy, A2s.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS 7671 regulation 434.5.2.

    Example:
        >>> withstand_energy_a2s(2.5, k=115)
        82656.25
    """
    require_above_zero(csa_mm2=csa_mm2, k=k)
    return (k * csa_mm2) ** 2


def fault_energy_a2s(fault_a: float, *, time_s: float) -> float:
    """Return the energy of a fault that lasts for a time, A2s.

    I^2 t

    Args:
        fault_a: Fault current, A, above 0.
        time_s: Time, s, above 0.

    Returns:
        Energy, A2s.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS 7671 regulation 434.5.2.

    Example:
        >>> round(fault_energy_a2s(200, time_s=0.4))
        16000
    """
    require_above_zero(fault_a=fault_a, time_s=time_s)
    return fault_a**2 * time_s


def longest_time_s(fault_a: float, *, csa_mm2: float, k: float) -> float:
    """Return how long a conductor stands a fault current, s.

    t = k^2 S^2 / I^2, good for up to 5 s.

    Args:
        fault_a: Fault current, A, above 0.
        csa_mm2: Cross-section, mm2, above 0.
        k: Factor of the conductor, A s^0.5 / mm2, above 0.

    Returns:
        Time, s.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS 7671 regulation 434.5.2.

    Example:
        >>> round(longest_time_s(500, csa_mm2=2.5, k=115), 3)
        0.331
    """
    require_above_zero(fault_a=fault_a)
    return withstand_energy_a2s(csa_mm2, k=k) / fault_a**2
