"""Joint of conductors: a solid dot."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, line


class JunctionDot(Sign):
    """Joint of conductors: a solid dot."""

    declaration = Declaration(
        name="junction_dot",
        legend="Conductors joined",
        group="wiring",
        standard=True,
        iec_60617="03-02-01 / S00016",
    )
    wire_ends = ("supply", "load", "right")

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 10),
            line(5, 5, 10, 5),
            circle(5, 5, 0.9, filled=True),
        ]
