"""AFDD: circuit-breaker with the letters AF beside it."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, circuit_breaker
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import letters


class Afdd(Sign):
    """AFDD: circuit-breaker with the letters AF beside it."""

    declaration = Declaration(
        name="afdd",
        legend="AFDD (arc fault detection device) with circuit-breaker",
        group="protection",
        standard=False,
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *circuit_breaker(),
            letters(7.8, 6.9, "AF"),
        ]
