"""Distribution board on a plan: a rectangle, half of it shaded."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, pole_stubs
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import polygon, rect


class DistributionBoard(Sign):
    """Distribution board on a plan: a rectangle, half of it shaded."""

    declaration = Declaration(
        name="distribution_board",
        legend="Distribution board or consumer unit",
        group="supply",
        standard=True,
        iec_60617="11-12-06 / S00456",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *pole_stubs(2.5, 7.5),
            rect(0.5, 2.5, 9, 5),
            polygon(0.5, 7.5, 9.5, 2.5, 9.5, 7.5, filled=True),
        ]
