"""Contactor: half circle at the fixed contact."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, make_contact
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import arc


class Contactor(Sign):
    """Contactor: half circle at the fixed contact."""

    declaration = Declaration(
        name="contactor",
        legend="Contactor (switch worked by a coil)",
        group="supply",
        standard=True,
        iec_60617="07-13-02 / S00284",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *make_contact(),
            arc(5, 1.4, 5.8, 2.2, 5, 3),
        ]
