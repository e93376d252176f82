"""Instantaneous release of a breaker with a setting (BS EN 60947-2)."""

from __future__ import annotations

from asfitted.errors import InputOutOfRangeError
from asfitted.reference.figure import Figure

TOLERANCE = 0.2
SOURCE = "BS EN 60947-2, 20 % tolerance of the short-circuit release"


def surely_trips_a(setting_a: float) -> Figure:
    """Return the current that surely trips at once, A: 1.2 times the setting Im."""
    return _share(setting_a, 1 + TOLERANCE)


def surely_holds_a(setting_a: float) -> Figure:
    """Return the current up to which it surely does not trip at once, A: 0.8 Im."""
    return _share(setting_a, 1 - TOLERANCE)


def _share(setting_a: float, share: float) -> Figure:
    if setting_a <= 0:
        raise InputOutOfRangeError(f"setting Im must be above 0 A, not {setting_a}")
    return Figure(setting_a * share, "A", SOURCE, "memory")
