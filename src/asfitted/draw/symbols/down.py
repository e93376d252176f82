"""Wiring that drops out of the view."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import arrow_head, circle, line


class Down(Sign):
    """Wiring that drops out of the view."""

    declaration = Declaration(
        name="down",
        legend="Wiring goes down out of this view",
        group="wiring",
        standard=True,
        iec_60617="11-11-05 area / S00450",
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            circle(5, 3.5, 0.85, filled=True),
            line(5, 3.5, 7.45, 7.17),
            arrow_head(5, 3.5, 8, 8),
        ]
