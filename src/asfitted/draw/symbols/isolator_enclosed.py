"""Switch-disconnector in a box of its own beside the load."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, switch_disconnector
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import rect


class IsolatorEnclosed(Sign):
    """Switch-disconnector in a box of its own beside the load."""

    declaration = Declaration(
        name="isolator_enclosed",
        legend="Isolator in its own enclosure, local to the load (may be opened under load)",
        group="supply",
        standard=False,
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *switch_disconnector(),
            rect(0.9, 1.4, 8.2, 7.2, narrow=True),
        ]
