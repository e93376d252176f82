"""Power supply unit: a converter from alternating (~) to direct (=)."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, pole_stubs
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import arc, line, rect


class PowerSupply(Sign):
    """Power supply unit: a converter from alternating (~) to direct (=)."""

    declaration = Declaration(
        name="power_supply",
        legend="Power supply unit (a.c. to d.c.)",
        group="data",
        standard=True,
        iec_60617="06-14-03 area",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *pole_stubs(1.5, 8.5),
            rect(1.5, 1.5, 7, 7),
            line(1.5, 8.5, 8.5, 1.5),
            arc(2.2, 3.5, 2.8, 2.9, 3.4, 3.5),
            arc(3.4, 3.5, 4, 4.1, 4.6, 3.5),
            line(5.4, 6.1, 7.6, 6.1),
            line(5.4, 7.1, 7.6, 7.1),
        ]
