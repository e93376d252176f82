"""Part of an armour gland: locknut."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class GlandLocknut(Sign):
    """Part of an armour gland: locknut."""

    declaration = Declaration(
        name="gland_locknut",
        legend="Gland part: locknut",
        group="containment",
        standard=False,
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            rect(3.7, 1, 2.6, 8),
            line(3.7, 3.6, 6.3, 3.6, narrow=True),
            line(3.7, 6.4, 6.3, 6.4, narrow=True),
        ]
