"""Switch that powers its ports: letters, and ticks for ports."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import letters, line, rect


class PoeSwitch(Sign):
    """Switch that powers its ports: letters, and ticks for ports."""

    declaration = Declaration(
        name="poe_switch",
        legend="Network switch that powers its ports (PoE)",
        group="data",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 2.5),
            rect(0.5, 2.5, 9, 5),
            letters(5, 6.25, "PoE"),
            *(line(x, 7.5, x, 8.7) for x in (2, 4, 6, 8)),
        ]
