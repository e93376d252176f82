"""Luminaire: a circle with a saltire."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, line


class Luminaire(Sign):
    """Luminaire: a circle with a saltire."""

    declaration = Declaration(
        name="luminaire",
        legend="Luminaire",
        group="accessories",
        standard=True,
        iec_60617="11-15-04 area / S00965",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 1.5),
            circle(5, 5, 3.5),
            line(2.53, 2.53, 7.47, 7.47),
            line(7.47, 2.53, 2.53, 7.47),
        ]
