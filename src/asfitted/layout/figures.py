"""Figures as they are told on paper."""

from __future__ import annotations

from asfitted.rounding import rounded

__all__ = ["metres", "place_m", "rounded"]


def metres(length_m: float) -> str:
    """Return a length as told on every sheet: ``18.2 m``."""
    return f"{rounded(length_m, 1)} m"


def place_m(length_mm: float) -> str:
    """Return where something is, in metres as exact as drawings dimension it: ``1.75 m``."""
    return f"{rounded(length_mm / 1000, 2)} m"
