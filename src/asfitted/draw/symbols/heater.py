"""Heater: a rectangle with bars."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class Heater(Sign):
    """Heater: a rectangle with bars."""

    declaration = Declaration(
        name="heater",
        legend="Heater, oven or kiln",
        group="accessories",
        standard=True,
        iec_60617="11-16-01 area",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 3),
            rect(1, 3, 8, 4),
            *(line(x, 3, x, 7) for x in (3, 5, 7)),
        ]
