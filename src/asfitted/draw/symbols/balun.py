"""Balun: a converter with the coaxial side at the ring, the pair at the strokes."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, line, rect


class Balun(Sign):
    """Balun: a converter with the coaxial side at the ring, the pair at the strokes."""

    declaration = Declaration(
        name="balun",
        legend="Balun (ring: coaxial side; two strokes: pair side)",
        group="data",
        standard=True,
        iec_60617="02-17-06 area / S00213",
    )
    wire_ends = ("left", "right")

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(0, 5, 1.5, 5),
            line(8.5, 5, 10, 5),
            rect(1.5, 2.5, 7, 5),
            line(1.5, 7.5, 8.5, 2.5),
            circle(3.1, 3.9, 0.6),
            line(5.7, 6.8, 6.7, 5.3),
            line(6.8, 6.8, 7.8, 5.3),
        ]
