"""Ventilating fan: a two-bladed fan in a circle."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import arc, circle, line


class Fan(Sign):
    """Ventilating fan: a two-bladed fan in a circle."""

    declaration = Declaration(
        name="fan",
        legend="Fan",
        group="accessories",
        standard=True,
        iec_60617="11-16-02 area",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 0.8),
            circle(5, 5, 4.2),
            circle(5, 5, 0.7, filled=True),
            arc(0.8, 5, 2.9, 3.5, 5, 5),
            arc(0.8, 5, 2.9, 6.5, 5, 5),
            arc(5, 5, 7.1, 3.5, 9.2, 5),
            arc(5, 5, 7.1, 6.5, 9.2, 5),
        ]
