"""Three conductors: one oblique stroke for each."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line


class Strokes3(Sign):
    """Three conductors: one oblique stroke for each."""

    declaration = Declaration(
        name="strokes_3",
        legend="Three conductors in one line",
        group="wiring",
        standard=True,
        iec_60617="03-01-02 / S00002",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 10),
            *(line(3, y, 7, y - 2.3) for y in (4.9, 6.15, 7.4)),
        ]
