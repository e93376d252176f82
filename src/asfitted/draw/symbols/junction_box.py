"""Junction box: a circle with a dot."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, pole_stubs
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle


class JunctionBox(Sign):
    """Junction box: a circle with a dot."""

    declaration = Declaration(
        name="junction_box",
        legend="Junction box",
        group="wiring",
        standard=True,
        iec_60617="11-12-04 / S00454",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *pole_stubs(2, 8),
            circle(5, 5, 3),
            circle(5, 5, 1, filled=True),
        ]
