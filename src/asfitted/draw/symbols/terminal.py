"""Terminal: a small open circle."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, line


class Terminal(Sign):
    """Terminal: a small open circle."""

    declaration = Declaration(
        name="terminal",
        legend="Terminal",
        group="wiring",
        standard=True,
        iec_60617="03-02-02 / S00017",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 4.2),
            circle(5, 5, 0.8),
            line(5, 5.8, 5, 10),
        ]
