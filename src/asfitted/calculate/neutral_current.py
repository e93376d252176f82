"""Neutral current of unbalanced loads and of triplen harmonics."""

from __future__ import annotations

import math
from cmath import rect

from asfitted.calculate.ranges import require_above_zero, require_not_negative
from asfitted.errors import InputOutOfRangeError
from asfitted.reference.factors import third_harmonic


def neutral_current_a(
    l1_a: float, l2_a: float, l3_a: float, *, lag_degrees: tuple[float, float, float] = (0, 0, 0)
) -> float:
    """Return the neutral current of three line currents at 50 Hz, A.

    Phasor sum; at equal power factors sqrt(a^2 + b^2 + c^2 - ab - bc - ca).

    Args:
        l1_a: Current of L1, A, 0 or more.
        l2_a: Current of L2, A, 0 or more.
        l3_a: Current of L3, A, 0 or more.
        lag_degrees: Lag of each current behind its own voltage, degrees.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: a current is below 0.

    Source:
        Phasor sum of a four-wire three-phase system.

    Example:
        >>> round(neutral_current_a(10, 8, 6), 2)
        3.46
    """
    require_not_negative(l1_a=l1_a, l2_a=l2_a, l3_a=l3_a)
    total = sum(
        rect(current, math.radians(-120.0 * index - lag))
        for index, (current, lag) in enumerate(zip((l1_a, l2_a, l3_a), lag_degrees, strict=True))
    )
    return abs(total)


def harmonic_neutral_a(line_a: float, *, third_harmonic_percent: float) -> float:
    """Return the neutral current of triplen harmonics in a balanced load, A.

    IN = 3 h3 I: the third harmonics of three lines add up.

    Args:
        line_a: Line current, A, above 0.
        third_harmonic_percent: Third harmonic in the line current, %, 0 to 100.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        BS 7671 Appendix 4, clause 5.5; IEC 60364-5-52 Annex E.

    Example:
        >>> round(harmonic_neutral_a(39, third_harmonic_percent=40), 1)
        46.8
    """
    require_above_zero(line_a=line_a)
    if not 0 <= third_harmonic_percent <= 100:
        raise InputOutOfRangeError(f"third harmonic must be 0 to 100 %: {third_harmonic_percent}")
    return 3.0 * third_harmonic_percent / 100.0 * line_a


def harmonic_sizing_current_a(line_a: float, *, third_harmonic_percent: float) -> float:
    """Return the current to size a four- or five-core cable by, A.

    Line current up to 33 % third harmonic, neutral current above; divided by 0.86 from 15 % to
    45 %.

    Args:
        line_a: Line current, A, above 0.
        third_harmonic_percent: Third harmonic in the line current, %, 0 to 100.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        BS 7671 Appendix 4, clause 5.5 and Table 4Aa; IEC 60364-5-52 Annex E.

    Example:
        >>> round(harmonic_sizing_current_a(39, third_harmonic_percent=20), 2)
        45.35
    """
    factor, on_neutral = third_harmonic(third_harmonic_percent)
    neutral_a = harmonic_neutral_a(line_a, third_harmonic_percent=third_harmonic_percent)
    return (neutral_a if on_neutral else line_a) / factor.value
