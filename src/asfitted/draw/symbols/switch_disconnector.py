"""Switch-disconnector: bar, and under it the small circle of a load switch."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, switch_disconnector
from asfitted.draw.symbols._sign import Declaration, Sign


class SwitchDisconnector(Sign):
    """Switch-disconnector: bar, and under it the small circle of a load switch."""

    declaration = Declaration(
        name="switch_disconnector",
        legend="Switch-disconnector (isolator you may open under load)",
        group="supply",
        standard=True,
        iec_60617="07-13-08 / S00290",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *switch_disconnector(),
        ]
