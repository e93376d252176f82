"""Part of an armour gland: wall of the enclosure with its hole."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class GlandWall(Sign):
    """Part of an armour gland: wall of the enclosure with its hole."""

    declaration = Declaration(
        name="gland_wall",
        legend="Wall of the enclosure",
        group="containment",
        standard=False,
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            rect(4.2, 0, 1.6, 2.6),
            rect(4.2, 7.4, 1.6, 2.6),
            line(4.2, 1.6, 5.8, 0, narrow=True),
            line(4.2, 2.6, 5.8, 1, narrow=True),
            line(4.2, 9, 5.8, 7.4, narrow=True),
            line(4.2, 10, 5.8, 8.4, narrow=True),
        ]
