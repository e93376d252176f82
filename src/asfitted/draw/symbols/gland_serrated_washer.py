"""Part of an armour gland: serrated washer."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import polygon


class GlandSerratedWasher(Sign):
    """Part of an armour gland: serrated washer."""

    declaration = Declaration(
        name="gland_serrated_washer",
        legend="Gland part: serrated washer",
        group="containment",
        standard=False,
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            polygon(
                4.6,
                1.8,
                5.4,
                1.8,
                6,
                2.6,
                5.4,
                3.4,
                6,
                4.2,
                5.4,
                5,
                6,
                5.8,
                5.4,
                6.6,
                6,
                7.4,
                5.4,
                8.2,
                4.6,
                8.2,
            ),
        ]
