"""Bushed entry of a cable without armour."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class BushedEntry(Sign):
    """Bushed entry of a cable without armour."""

    declaration = Declaration(
        name="bushed_entry",
        legend="Bushed or sealed entry of a cable without armour",
        group="wiring",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 4.8),
            rect(2.8, 4.8, 4.4, 1.8),
        ]
