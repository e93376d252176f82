"""Generator: G in a circle; power leaves at the bottom."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import machine
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line


class Generator(Sign):
    """Generator: G in a circle; power leaves at the bottom."""

    declaration = Declaration(
        name="generator",
        legend="Generator, three-phase",
        group="supply",
        standard=True,
        iec_60617="06-04-01 area / S00819",
    )
    wire_ends = ("load",)

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *machine("G", "3~"),
            line(5, 9.2, 5, 10),
        ]
