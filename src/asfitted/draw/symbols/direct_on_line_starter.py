"""Direct-on-line starter: contactor, thermal overload relay in line, trip link."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, contactor_contact, thermal_relay
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line


class DirectOnLineStarter(Sign):
    """Direct-on-line starter: contactor, thermal overload relay in line, trip link."""

    declaration = Declaration(
        name="direct_on_line_starter",
        legend="Direct-on-line starter: contactor opened by its thermal overload relay",
        group="supply",
        standard=True,
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *contactor_contact(),
            *thermal_relay(5.6),
            line(2.8, 7.2, 1.2, 7.2, 1.2, 3.2, 3.9, 3.2, dashed=True, narrow=True),
        ]
