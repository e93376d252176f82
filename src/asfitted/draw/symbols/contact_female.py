"""Socket contact: the cup that takes a pin."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import arc, line


class ContactFemale(Sign):
    """Socket contact: the cup that takes a pin."""

    declaration = Declaration(
        name="contact_female",
        legend="Contact of a socket-outlet",
        group="wiring",
        standard=True,
        iec_60617="03-03-01 / S00031",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 5.5),
            arc(3, 7.5, 5, 5.5, 7, 7.5),
        ]
