"""Round plug for extra-low voltage d.c.: centre and sleeve."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class PlugDc(Sign):
    """Round plug for extra-low voltage d.c.: centre and sleeve."""

    declaration = Declaration(
        name="plug_dc",
        legend="Round d.c. plug; polarity as written",
        group="data",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 2),
            rect(2.8, 2, 4.4, 4),
            rect(3.9, 6, 2.2, 3.5),
            line(5, 6, 5, 9.5, narrow=True),
        ]
