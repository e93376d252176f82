"""Main earthing terminal: a bar with link holes."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, line, rect


class Met(Sign):
    """Main earthing terminal: a bar with link holes."""

    declaration = Declaration(
        name="met",
        legend="Main earthing terminal",
        group="supply",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 4),
            rect(0.5, 4, 9, 2),
            *(circle(x, 5, 0.5) for x in (2, 4, 6, 8)),
        ]
