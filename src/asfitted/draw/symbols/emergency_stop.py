"""Emergency stop: a mushroom head on a link to the contact."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, make_contact
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import arc, line


class EmergencyStop(Sign):
    """Emergency stop: a mushroom head on a link to the contact."""

    declaration = Declaration(
        name="emergency_stop",
        legend="Emergency stop push-button",
        group="accessories",
        standard=False,
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *make_contact(),
            line(3.75, 5, 1.6, 5, dashed=True, narrow=True),
            arc(1.6, 3.6, 0.2, 5, 1.6, 6.4),
            line(1.6, 3.6, 1.6, 6.4),
        ]
