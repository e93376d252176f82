"""A plain switch: says nothing of isolating or of breaking load."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, make_contact
from asfitted.draw.symbols._sign import Declaration, Sign


class MakeContact(Sign):
    """A plain switch: says nothing of isolating or of breaking load."""

    declaration = Declaration(
        name="make_contact",
        legend="Switch (no claim that it isolates)",
        group="supply",
        standard=True,
        iec_60617="07-02-01 / S00227",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *make_contact(),
        ]
