"""Router: a circle with letters."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, letters, line


class Router(Sign):
    """Router: a circle with letters."""

    declaration = Declaration(
        name="router",
        legend="Router",
        group="data",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 0.8),
            circle(5, 5, 4.2),
            letters(5, 6.25, "RTR"),
        ]
