"""Wireless access point: a small bowl and the waves under it."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import arc, line


class AccessPoint(Sign):
    """Wireless access point: a small bowl and the waves under it."""

    declaration = Declaration(
        name="access_point",
        legend="Wireless access point",
        group="data",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 2.6),
            line(2.6, 2.6, 7.4, 2.6),
            arc(3.2, 2.6, 5, 4.4, 6.8, 2.6),
            arc(2.31, 5.57, 5, 6.6, 7.69, 5.57),
            arc(1.17, 6.82, 5, 8.3, 8.83, 6.82),
        ]
