"""Equipment with a fixed connection: a plain box."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class Equipment(Sign):
    """Equipment with a fixed connection: a plain box."""

    declaration = Declaration(
        name="equipment",
        legend="Equipment with a fixed connection",
        group="accessories",
        standard=True,
        iec_60617="02-01-02 area",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [line(5, 0, 5, 3), rect(1, 3, 8, 5)]
