"""Coaxial plug: pin in the middle, body round it."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, line


class PlugBnc(Sign):
    """Coaxial plug: pin in the middle, body round it."""

    declaration = Declaration(
        name="plug_bnc",
        legend="BNC plug (coaxial)",
        group="data",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 2),
            circle(5, 5, 3),
            circle(5, 5, 0.7, filled=True),
        ]
