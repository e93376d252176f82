"""Earth electrode: earth bars with the stem carried on down as a rod."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line


class EarthElectrode(Sign):
    """Earth electrode: earth bars with the stem carried on down as a rod."""

    declaration = Declaration(
        name="earth_electrode",
        legend="Earth electrode (rod)",
        group="supply",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 9.6),
            line(1.5, 4, 8.5, 4),
            line(3, 5.6, 7, 5.6),
            line(4, 7.2, 6, 7.2),
        ]
