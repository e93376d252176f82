"""Figures as printed in findings: as few decimals as keep the two apart."""

from __future__ import annotations

from asfitted.rounding import rounded


def printed(value: float, decimals: int) -> str:
    """Return a figure with at most so many decimals, without idle noughts.

    >>> printed(32.0, 2), printed(0.684, 2)
    ('32', '0.68')
    """
    text = rounded(value, decimals)
    return text.rstrip("0").rstrip(".") if "." in text else text


def with_unit(value: float, unit: str, decimals: int = 2) -> str:
    """Return a figure and its unit, ``27.4 A``."""
    figure = printed(value, decimals)
    return f"{figure} {unit}" if unit else figure


def pair(found: float, limit: float, unit: str) -> tuple[str, str]:
    """Return two unequal figures with enough decimals that the reader can tell them apart.

    >>> pair(5.0004, 5.0, "%")
    ('5.0004 %', '5 %')
    >>> pair(14.0, 12.95, "W")
    ('14 W', '12.95 W')
    """
    small = abs(limit) < 10 or abs(round(limit, 1) - limit) > 1e-9 >= abs(round(limit, 2) - limit)
    decimals = 0 if max(abs(found), abs(limit)) >= 1000 else 2 if small else 1
    while decimals < 6 and printed(found, decimals) == printed(limit, decimals) and found != limit:
        decimals += 1
    return with_unit(found, unit, decimals), with_unit(limit, unit, decimals)
