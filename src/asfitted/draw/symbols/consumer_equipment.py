"""Service intake: the distributor's cut-out, lower half solid."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, pole_stubs
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import rect


class ConsumerEquipment(Sign):
    """Service intake: the distributor's cut-out, lower half solid."""

    declaration = Declaration(
        name="consumer_equipment",
        legend="Supply intake (distributor's service cut-out)",
        group="supply",
        standard=True,
        iec_60617="11-12-05 / S00455",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *pole_stubs(2, 8),
            rect(1, 2, 8, 6),
            rect(1, 5, 8, 3, filled=True),
        ]
