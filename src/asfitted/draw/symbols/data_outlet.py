"""Data outlet: a square-cornered cup with a letter for the service."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import letters, line


class DataOutlet(Sign):
    """Data outlet: a square-cornered cup with a letter for the service."""

    declaration = Declaration(
        name="data_outlet",
        legend="Data outlet",
        group="data",
        standard=True,
        iec_60617="11-13-09 / S00465",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 4),
            line(1.5, 7.5, 1.5, 4, 8.5, 4, 8.5, 7.5),
            letters(5, 7.9, "D"),
        ]
