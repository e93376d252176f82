"""Dome camera: a bowl under the ceiling with its lens."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import arc, circle, line


class CameraDome(Sign):
    """Dome camera: a bowl under the ceiling with its lens."""

    declaration = Declaration(
        name="camera_dome",
        legend="Camera, dome",
        group="data",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 3),
            line(1, 3, 9, 3),
            arc(1.8, 3, 5, 7.2, 8.2, 3),
            circle(5, 4.8, 0.9),
        ]
