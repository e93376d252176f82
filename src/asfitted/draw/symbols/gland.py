"""Armour gland through the wall of an enclosure: nut, body, earth tag to the right, locknut."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class Gland(Sign):
    """Armour gland through the wall of an enclosure: nut, body, earth tag to the right, locknut."""

    declaration = Declaration(
        name="gland",
        legend="Armour gland with earth tag; locknut inside the enclosure",
        group="wiring",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 1.2),
            rect(2.2, 1.2, 5.6, 1.6),
            rect(2.9, 2.8, 4.2, 1.8),
            line(2.2, 5.8, 10, 5.8),
            rect(2.2, 6.4, 5.6, 1.6),
        ]
