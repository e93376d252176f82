"""Refusal of inputs outside the range a formula holds for."""

from __future__ import annotations

from asfitted.errors import InputOutOfRangeError


def require_above_zero(**values: float) -> None:
    """Refuse a value that is not above zero.

    Raises:
        InputOutOfRangeError: names the first such value.
    """
    for name, value in values.items():
        if not value > 0:
            raise InputOutOfRangeError(f"{name} must be above 0, not {value}")


def require_not_negative(**values: float) -> None:
    """Refuse a value below zero.

    Raises:
        InputOutOfRangeError: names the first such value.
    """
    for name, value in values.items():
        if not value >= 0:
            raise InputOutOfRangeError(f"{name} must not be below 0, not {value}")


def require_fraction(**values: float) -> None:
    """Refuse a value outside 0 (exclusive) to 1 (inclusive), such as a power factor.

    Raises:
        InputOutOfRangeError: names the first such value.
    """
    for name, value in values.items():
        if not 0 < value <= 1:
            raise InputOutOfRangeError(f"{name} must be above 0 and at most 1, not {value}")
