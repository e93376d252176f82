"""Wiring that rises out of the view."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import arrow_head, circle, line


class Up(Sign):
    """Wiring that rises out of the view."""

    declaration = Declaration(
        name="up",
        legend="Wiring goes up out of this view",
        group="wiring",
        standard=True,
        iec_60617="11-11-04 area / S00449",
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            circle(5, 6.5, 0.85, filled=True),
            line(5, 6.5, 7.45, 2.83),
            arrow_head(5, 6.5, 8, 2),
        ]
