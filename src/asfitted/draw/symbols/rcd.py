"""RCD: load switch, summation ring round the conductor, trip link."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, residual_current_ring, switch_disconnector
from asfitted.draw.symbols._sign import Declaration, Sign


class Rcd(Sign):
    """RCD: load switch, summation ring round the conductor, trip link."""

    declaration = Declaration(
        name="rcd",
        legend="RCD (opens on earth leakage; no overload protection)",
        group="protection",
        standard=False,
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *switch_disconnector(),
            *residual_current_ring(),
        ]
