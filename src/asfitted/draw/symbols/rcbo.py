"""RCBO: circuit-breaker with the summation ring and trip link of an RCD."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, circuit_breaker, residual_current_ring
from asfitted.draw.symbols._sign import Declaration, Sign


class Rcbo(Sign):
    """RCBO: circuit-breaker with the summation ring and trip link of an RCD."""

    declaration = Declaration(
        name="rcbo",
        legend="RCBO (circuit-breaker that also opens on earth leakage)",
        group="protection",
        standard=False,
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *circuit_breaker(),
            *residual_current_ring(),
        ]
