"""Power over Ethernet: loss in the cable, current, and the budget of a switch."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from asfitted.calculate.ranges import require_above_zero, require_fraction, require_not_negative
from asfitted.errors import InputOutOfRangeError
from asfitted.reference.cctv import poe_type

if TYPE_CHECKING:
    from collections.abc import Sequence


def device_power_w(source_w: float, *, current_a: float, channel_ohm: float) -> float:
    """Return the power left at the device, W.

    P = Psource - I^2 R

    Args:
        source_w: Power at the source, W, above 0.
        current_a: Current, A, 0 or more.
        channel_ohm: Resistance of the channel, ohm, 0 or more.

    Returns:
        Power, W.

    Raises:
        InputOutOfRangeError: an input lies outside its range, or nothing is left.

    Source:
        IEEE 802.3 clauses 33 and 145.

    Example:
        >>> round(device_power_w(15.4, current_a=0.35, channel_ohm=20), 2)
        12.95
    """
    require_above_zero(source_w=source_w)
    require_not_negative(current_a=current_a, channel_ohm=channel_ohm)
    left_w = source_w - current_a**2 * channel_ohm
    if left_w <= 0:
        raise InputOutOfRangeError(f"{current_a:g} A over {channel_ohm:g} ohm leaves no power")
    return left_w


def channel_current_a(device_w: float, *, source_v: float, channel_ohm: float) -> float:
    """Return the current that a device draws over the channel, A.

    I = (V - sqrt(V^2 - 4 P R)) / (2 R)

    Args:
        device_w: Power of the device, W, 0 or more.
        source_v: Voltage at the source, V, above 0.
        channel_ohm: Resistance of the channel out and back, ohm, above 0.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: the channel cannot carry that power.

    Source:
        Ohm's law, solved for the lower current.

    Example:
        >>> round(channel_current_a(25.5, source_v=50, channel_ohm=12.5), 3)
        0.6
    """
    require_not_negative(device_w=device_w)
    require_above_zero(source_v=source_v, channel_ohm=channel_ohm)
    under_root = source_v**2 - 4.0 * device_w * channel_ohm
    if under_root < 0:
        raise InputOutOfRangeError(f"{device_w:g} W cannot be carried over {channel_ohm:g} ohm")
    return (source_v - math.sqrt(under_root)) / (2.0 * channel_ohm)


def least_type(device_w: float) -> int:
    """Return the least type of Power over Ethernet that feeds a device after 100 m.

    Args:
        device_w: Greatest power of the device, W, above 0.

    Returns:
        Type, 1 to 4.

    Raises:
        InputOutOfRangeError: more than type 4 gives.

    Source:
        IEEE 802.3 clauses 33 and 145.

    Example:
        >>> least_type(20)
        2
    """
    require_above_zero(device_w=device_w)
    for number in (1, 2, 3, 4):
        if device_w <= poe_type(number).device_w:
            return number
    raise InputOutOfRangeError(f"{device_w:g} W is more than Power over Ethernet type 4 gives")


def switch_load_w(device_powers_w: Sequence[float], *, efficiency: float = 0.85) -> float:
    """Return the load on the power budget of a switch, W.

    P = sum(P device) / efficiency, the loss in the cables allowed for.

    Args:
        device_powers_w: Greatest power of each device, W, 0 or more.
        efficiency: Share of the source power that reaches the device, ratio, above 0 to 1.

    Returns:
        Power, W.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Least efficiency of IEEE 802.3 types 1 and 2 over 100 m (12.95/15.4 = 0.84, 25.5/30 =
        0.85).

    Example:
        >>> round(switch_load_w([7, 7, 12.5]), 1)
        31.2
    """
    require_fraction(efficiency=efficiency)
    for power_w in device_powers_w:
        require_not_negative(power_w=power_w)
    return sum(device_powers_w) / efficiency


def current_per_conductor_a(channel_a: float, *, pairs: int) -> float:
    """Return the current of one conductor, A.

    Half the powered pairs go out and half come back, each pair with two conductors:
    I / pairs.

    Args:
        channel_a: Current of the whole channel, A, 0 or more.
        pairs: Powered pairs, 2 or 4.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: not 2 or 4 pairs, or a current below 0.

    Source:
        IEEE 802.3 clause 145, both conductors of a pair in parallel.

    Example:
        >>> current_per_conductor_a(0.6, pairs=2)
        0.3
    """
    require_not_negative(channel_a=channel_a)
    if pairs not in (2, 4):
        raise InputOutOfRangeError(f"pairs must be 2 or 4, not {pairs}")
    return channel_a / pairs
