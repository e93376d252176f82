"""Part of an armour gland: clamping ring, tapered."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import polygon


class GlandClampRing(Sign):
    """Part of an armour gland: clamping ring, tapered."""

    declaration = Declaration(
        name="gland_clamp_ring",
        legend="Gland part: clamping ring",
        group="containment",
        standard=False,
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            polygon(3.6, 2.8, 6.4, 1.8, 6.4, 8.2, 3.6, 7.2),
        ]
