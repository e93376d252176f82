"""Energy meter: a square with a strip across its top."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, pole_stubs, square
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import letters, line


class MeterKwh(Sign):
    """Energy meter: a square with a strip across its top."""

    declaration = Declaration(
        name="meter_kwh",
        legend="Energy meter (kilowatt-hours)",
        group="supply",
        standard=True,
        iec_60617="08-04-03 / S00933",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *pole_stubs(1, 9),
            square(),
            line(1, 3, 9, 3),
            letters(5, 7.4, "kWh"),
        ]
