"""Three-phase motor."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END, machine
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line


class Motor3ph(Sign):
    """Three-phase motor."""

    declaration = Declaration(
        name="motor_3ph",
        legend="Motor, three-phase",
        group="accessories",
        standard=True,
        iec_60617="06-04-01 area / S00819",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 0.8),
            *machine("M", "3~"),
        ]
