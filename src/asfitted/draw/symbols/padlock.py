"""Padlock: the switch can be locked off."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import arc, circle, rect


class Padlock(Sign):
    """Padlock: the switch can be locked off."""

    declaration = Declaration(
        name="padlock",
        legend="Can be locked off with a padlock",
        group="marks",
        standard=False,
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            rect(2.2, 5, 5.6, 4),
            arc(3.2, 5, 5, 1.6, 6.8, 5),
            circle(5, 7, 0.6),
        ]
