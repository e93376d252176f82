"""Floodlight: a lamp with its reflector and two arrows that spread."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import arc, arrow_head, circle, line


class Floodlight(Sign):
    """Floodlight: a lamp with its reflector and two arrows that spread."""

    declaration = Declaration(
        name="floodlight",
        legend="Floodlight",
        group="accessories",
        standard=True,
        iec_60617="11-15-09 / S00489",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 1.4),
            circle(5, 4.6, 2),
            line(3.59, 3.19, 6.41, 6.01),
            line(6.41, 3.19, 3.59, 6.01),
            arc(1.8, 4.6, 5, 1.4, 8.2, 4.6),
            line(3.6, 7, 2.18, 9.05),
            line(6.4, 7, 7.82, 9.05),
            arrow_head(3.6, 7, 1.6, 9.88),
            arrow_head(6.4, 7, 8.4, 9.88),
        ]
