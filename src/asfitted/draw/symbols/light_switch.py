"""Switch for lighting: a small circle with an oblique stroke and its tick."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, line


class LightSwitch(Sign):
    """Switch for lighting: a small circle with an oblique stroke and its tick."""

    declaration = Declaration(
        name="light_switch",
        legend="Light switch",
        group="accessories",
        standard=True,
        iec_60617="11-14-01 area",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 5.2),
            circle(5, 6.4, 1.2),
            line(5.6, 5.36, 7.75, 1.64, 8.79, 2.24),
        ]
