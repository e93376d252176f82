"""Protective earth: the earth bars inside a circle."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, line


class ProtectiveEarth(Sign):
    """Protective earth: the earth bars inside a circle."""

    declaration = Declaration(
        name="protective_earth",
        legend="Protective earth",
        group="supply",
        standard=True,
        iec_60617="02-15-03 / S00202",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 4.6),
            line(2.6, 4.6, 7.4, 4.6),
            line(3.5, 6, 6.5, 6),
            line(4.3, 7.4, 5.7, 7.4),
            circle(5, 5.4, 3.8),
        ]
