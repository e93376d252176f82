"""Surge protective device: an arrow inside a rectangle, its lower end to earth."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import arrow_head, line, rect


class Spd(Sign):
    """Surge protective device: an arrow inside a rectangle, its lower end to earth."""

    declaration = Declaration(
        name="spd",
        legend="Surge protective device (SPD), lower end to earth",
        group="protection",
        standard=True,
        iec_60617="07-22-03 / S00373",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 4.6),
            arrow_head(5, 0, 5, 5.9),
            rect(3.5, 2, 3, 5),
            line(5, 7, 5, 10),
        ]
