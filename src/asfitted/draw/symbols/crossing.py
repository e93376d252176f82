"""Conductors that cross without a dot are not joined."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line


class Crossing(Sign):
    """Conductors that cross without a dot are not joined."""

    declaration = Declaration(
        name="crossing",
        legend="Conductors that cross and are not joined",
        group="wiring",
        standard=True,
    )
    wire_ends = ("supply", "load", "left", "right")

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 10),
            line(0, 5, 10, 5),
        ]
