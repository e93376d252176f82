"""Earth: three bars that shrink."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line


class Earth(Sign):
    """Earth: three bars that shrink."""

    declaration = Declaration(
        name="earth",
        legend="Earth",
        group="supply",
        standard=True,
        iec_60617="02-15-01 / S00200",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 5),
            line(1.5, 5, 8.5, 5),
            line(3, 6.8, 7, 6.8),
            line(4.2, 8.6, 5.8, 8.6),
        ]
