"""Part of an armour gland: shroud over the cable."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import polygon


class GlandShroud(Sign):
    """Part of an armour gland: shroud over the cable."""

    declaration = Declaration(
        name="gland_shroud",
        legend="Gland part: shroud",
        group="containment",
        standard=False,
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            polygon(1, 3.4, 8.8, 1, 8.8, 9, 1, 6.6),
        ]
