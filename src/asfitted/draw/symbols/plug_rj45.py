"""Eight-way plug: a clip and eight contacts."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class PlugRj45(Sign):
    """Eight-way plug: a clip and eight contacts."""

    declaration = Declaration(
        name="plug_rj45",
        legend="Eight-way plug (RJ45), pins 1 to 8",
        group="data",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 1.8),
            rect(1, 1.8, 8, 5),
            rect(3.4, 6.8, 3.2, 1.6),
            *(
                line(x, 2.6, x, 4.6, narrow=True)
                for x in (1.85, 2.75, 3.65, 4.55, 5.45, 6.35, 7.25, 8.15)
            ),
        ]
