"""Neutral: an oblique stroke with a round blob at its end."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, oblique_stroke
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle


class StrokeNeutral(Sign):
    """Neutral: an oblique stroke with a round blob at its end."""

    declaration = Declaration(
        name="stroke_neutral",
        legend="Neutral conductor",
        group="wiring",
        standard=True,
        iec_60617="11-11-01 / S00446",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *oblique_stroke(),
            circle(7.4, 3.62, 0.75, filled=True),
        ]
