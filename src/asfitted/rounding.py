"""How figures are rounded for paper: halves go up, so that no length is told too short.

What a thing can do at most is rounded down, so that it is never told to do more.
"""

from __future__ import annotations

from decimal import ROUND_FLOOR, ROUND_HALF_UP, Decimal


def rounded(value: float, digits: int) -> str:
    """Return a figure with fixed decimals, a half rounded up: 18.15 is told as 18.2.

    Example:
        >>> rounded(18.15, 1), rounded(0.95, 1), rounded(8.8249, 1)
        ('18.2', '1.0', '8.8')
    """
    # six decimals first: a sum of binary fractions may fall a hair short of its half
    exact = Decimal(f"{value:.6f}")
    return str(exact.quantize(Decimal(1).scaleb(-digits), rounding=ROUND_HALF_UP))


def rounded_down(value: float, digits: int) -> str:
    """Return a figure with fixed decimals that is never above the value: 7.96 is told as 7.9.

    Example:
        >>> rounded_down(7.96, 1), rounded_down(8.0, 1), rounded_down(0.3 / 0.1, 1)
        ('7.9', '8.0', '3.0')
    """
    exact = Decimal(f"{value:.6f}")  # as above: 2.9999999999999996 is 3
    return str(exact.quantize(Decimal(1).scaleb(-digits), rounding=ROUND_FLOOR))
