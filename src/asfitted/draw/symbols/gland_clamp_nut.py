"""Part of an armour gland: clamping nut, the back part of the body."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class GlandClampNut(Sign):
    """Part of an armour gland: clamping nut, the back part of the body."""

    declaration = Declaration(
        name="gland_clamp_nut",
        legend="Gland part: clamping nut",
        group="containment",
        standard=False,
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            rect(1, 1, 4.8, 8),
            line(1, 3.6, 5.8, 3.6, narrow=True),
            line(1, 6.4, 5.8, 6.4, narrow=True),
            rect(5.8, 2.4, 3.4, 5.2),
            *(line(x, 2.4, x, 7.6, narrow=True) for x in (6.65, 7.5, 8.35)),
        ]
