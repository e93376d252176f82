"""Part of an armour gland: body with its cone and entry thread."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, polygon, rect


class GlandCone(Sign):
    """Part of an armour gland: body with its cone and entry thread."""

    declaration = Declaration(
        name="gland_cone",
        legend="Gland part: body with cone and entry thread",
        group="containment",
        standard=False,
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            polygon(0.6, 3.8, 3.4, 2.8, 3.4, 7.2, 0.6, 6.2),
            rect(3.4, 1, 2.6, 8),
            line(3.4, 3.6, 6, 3.6, narrow=True),
            line(3.4, 6.4, 6, 6.4, narrow=True),
            rect(6, 2.6, 3.4, 4.8),
            *(line(x, 2.6, x, 7.4, narrow=True) for x in (6.85, 7.7, 8.55)),
        ]
