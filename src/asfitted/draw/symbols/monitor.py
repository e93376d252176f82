"""Monitor: a screen on its foot."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class Monitor(Sign):
    """Monitor: a screen on its foot."""

    declaration = Declaration(
        name="monitor",
        legend="Monitor",
        group="data",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 1.5),
            rect(1, 1.5, 8, 5.5),
            line(5, 7, 5, 8.6),
            line(3, 8.6, 7, 8.6),
        ]
