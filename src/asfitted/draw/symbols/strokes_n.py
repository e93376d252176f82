"""Several conductors: one oblique stroke; the drawing sets the figure beside it."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, oblique_stroke
from asfitted.draw.symbols._sign import Declaration, Sign


class StrokesN(Sign):
    """Several conductors: one oblique stroke; the drawing sets the figure beside it."""

    declaration = Declaration(
        name="strokes_n",
        legend="Several conductors in one line (the figure beside the stroke says how many)",
        group="wiring",
        standard=True,
        iec_60617="03-01-03 / S00003",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *oblique_stroke(),
        ]
