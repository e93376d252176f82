"""Circuit-breaker that is suitable for isolation: saltire above the bar."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, isolating_bar, make_contact, saltire
from asfitted.draw.symbols._sign import Declaration, Sign


class CircuitBreakerIsolating(Sign):
    """Circuit-breaker that is suitable for isolation: saltire above the bar."""

    declaration = Declaration(
        name="circuit_breaker_isolating",
        legend="Circuit-breaker suitable for isolation",
        group="protection",
        standard=True,
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *make_contact(),
            *saltire(5, 1.3, 0.8),
            isolating_bar(),
        ]
