"""Transformer: two circles that overlap."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, pole_stubs
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle


class Transformer(Sign):
    """Transformer: two circles that overlap."""

    declaration = Declaration(
        name="transformer",
        legend="Transformer",
        group="supply",
        standard=True,
        iec_60617="06-09-01 / S00841",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *pole_stubs(1, 9),
            circle(5, 3.5, 2.5),
            circle(5, 6.5, 2.5),
        ]
