"""How figures read in a comparison: as on the sheets, halves up; a missing one says so."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

NOT_CHECKED = "not checked"
NOT_RECORDED = "not recorded"


def rounded(value: float, digits: int) -> str:
    """Return a figure with fixed decimals, a half rounded up.

    Example:
        >>> rounded(18.15, 1), rounded(2.345, 2)
        ('18.2', '2.35')
    """
    exact = Decimal(f"{value:.6f}")
    return str(exact.quantize(Decimal(1).scaleb(-digits), rounding=ROUND_HALF_UP))


def figure(value: float | None, digits: int, unit: str) -> str:
    """Return a calculated figure with its unit, or "not checked"."""
    return NOT_CHECKED if value is None else f"{rounded(value, digits)} {unit}"


def given(value: float | None, unit: str, per: float = 1.0) -> str:
    """Return a given figure with its unit, or "not recorded"; ``per`` turns it into that unit."""
    return NOT_RECORDED if value is None else f"{value / per:g} {unit}"


def metres(length_mm: float) -> str:
    """Return a length in mm as metres, without idle noughts: ``1.3 m``."""
    return f"{length_mm / 1000:g} m"
