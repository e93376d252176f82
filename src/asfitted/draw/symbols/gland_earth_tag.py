"""Part of an armour gland: earth tag with the hole for its bolt."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, polygon, rect


class GlandEarthTag(Sign):
    """Part of an armour gland: earth tag with the hole for its bolt."""

    declaration = Declaration(
        name="gland_earth_tag",
        legend="Gland part: earth tag",
        group="containment",
        standard=False,
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            rect(4.6, 2.6, 0.8, 6.2),
            polygon(4.6, 2.6, 4.6, 0.4, 7.6, 0.4, 7.6, 2, 5.4, 2, 5.4, 2.6),
            circle(6.5, 1.2, 0.4),
        ]
