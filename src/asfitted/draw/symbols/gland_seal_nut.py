"""Part of an armour gland: sealing nut with its outer seal."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class GlandSealNut(Sign):
    """Part of an armour gland: sealing nut with its outer seal."""

    declaration = Declaration(
        name="gland_seal_nut",
        legend="Gland part: sealing nut and outer seal",
        group="containment",
        standard=False,
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            rect(1.2, 2.6, 1, 4.8, filled=True),
            rect(2.2, 1.2, 6.2, 7.6),
            line(2.2, 3.6, 8.4, 3.6, narrow=True),
            line(2.2, 6.4, 8.4, 6.4, narrow=True),
        ]
