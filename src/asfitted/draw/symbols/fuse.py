"""Fuse: the conductor runs right through the rectangle."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class Fuse(Sign):
    """Fuse: the conductor runs right through the rectangle."""

    declaration = Declaration(
        name="fuse",
        legend="Fuse",
        group="protection",
        standard=True,
        iec_60617="07-21-01 / S00362",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 10),
            rect(4, 2.5, 2, 5),
        ]
