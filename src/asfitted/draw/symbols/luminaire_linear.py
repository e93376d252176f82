"""Linear luminaire: a bar with ticks at its ends."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line


class LuminaireLinear(Sign):
    """Linear luminaire: a bar with ticks at its ends."""

    declaration = Declaration(
        name="luminaire_linear",
        legend="Linear luminaire (batten)",
        group="accessories",
        standard=True,
        iec_60617="11-15-04 / S00484",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 5),
            line(0.5, 5, 9.5, 5),
            line(0.5, 3.6, 0.5, 6.4),
            line(9.5, 3.6, 9.5, 6.4),
        ]
