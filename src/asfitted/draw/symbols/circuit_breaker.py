"""Circuit-breaker: the saltire makes and breaks fault current."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, circuit_breaker
from asfitted.draw.symbols._sign import Declaration, Sign


class CircuitBreaker(Sign):
    """Circuit-breaker: the saltire makes and breaks fault current."""

    declaration = Declaration(
        name="circuit_breaker",
        legend="Circuit-breaker",
        group="protection",
        standard=True,
        iec_60617="07-13-05 / S00287",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *circuit_breaker(),
        ]
