"""Part of an armour gland: sealing washer."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import rect


class GlandSealWasher(Sign):
    """Part of an armour gland: sealing washer."""

    declaration = Declaration(
        name="gland_seal_washer",
        legend="Gland part: sealing washer",
        group="containment",
        standard=False,
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            rect(4.5, 1.6, 1, 6.8, filled=True),
        ]
