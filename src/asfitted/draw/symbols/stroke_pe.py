"""Protective conductor: an oblique stroke with a cross-bar at its end."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, oblique_stroke
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line


class StrokePe(Sign):
    """Protective conductor: an oblique stroke with a cross-bar at its end."""

    declaration = Declaration(
        name="stroke_pe",
        legend="Protective conductor",
        group="wiring",
        standard=True,
        iec_60617="11-11-02 / S00447",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *oblique_stroke(),
            line(6.5, 2.98, 7.5, 4.72),
        ]
