"""Self-contained emergency luminaire: saltire in a square, solid centre."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END, square
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, line


class LuminaireEmergency(Sign):
    """Self-contained emergency luminaire: saltire in a square, solid centre."""

    declaration = Declaration(
        name="luminaire_emergency",
        legend="Emergency luminaire, self-contained",
        group="accessories",
        standard=True,
        iec_60617="11-15-12 / S00492",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 1),
            square(),
            circle(5, 5, 1.4, filled=True),
            line(1, 1, 9, 9),
            line(9, 1, 1, 9),
        ]
