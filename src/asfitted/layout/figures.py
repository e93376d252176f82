"""Figures as they are told on paper."""

from __future__ import annotations

from asfitted.rounding import rounded

__all__ = ["metres", "rounded"]


def metres(length_m: float) -> str:
    """Return a length as told on every sheet: ``18.2 m``."""
    return f"{rounded(length_m, 1)} m"
