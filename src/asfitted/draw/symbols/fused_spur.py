"""Fused connection unit: a fuse inside a square."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, square
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class FusedSpur(Sign):
    """Fused connection unit: a fuse inside a square."""

    declaration = Declaration(
        name="fused_spur",
        legend="Fused connection unit (fused spur)",
        group="accessories",
        standard=False,
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 10),
            square(),
            rect(4.1, 3, 1.8, 4),
        ]
