"""Disconnector: the bar is its isolating distance."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, isolating_bar, make_contact
from asfitted.draw.symbols._sign import Declaration, Sign


class Isolator(Sign):
    """Disconnector: the bar is its isolating distance."""

    declaration = Declaration(
        name="isolator",
        legend="Disconnector (isolator: open it off load only)",
        group="supply",
        standard=True,
        iec_60617="07-13-06 / S00288",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *make_contact(),
            isolating_bar(),
        ]
