"""Current transformer: a ring on the conductor, two strokes for its two leads."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, line


class CurrentTransformer(Sign):
    """Current transformer: a ring on the conductor, two strokes for its two leads."""

    declaration = Declaration(
        name="current_transformer",
        legend="Current transformer",
        group="supply",
        standard=True,
        iec_60617="06-09-10 / S00850",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 10),
            circle(5, 5, 1.5),
            line(6.5, 5, 9.4, 5),
            line(7.2, 5.9, 8, 4.1),
            line(8.2, 5.9, 9, 4.1),
        ]
