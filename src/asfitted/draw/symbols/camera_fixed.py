"""Fixed camera: a body and a lens that points the way it looks."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, polygon, rect


class CameraFixed(Sign):
    """Fixed camera: a body and a lens that points the way it looks."""

    declaration = Declaration(
        name="camera_fixed",
        legend="Camera, fixed (the lens points the way it looks)",
        group="data",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 3.2),
            rect(1, 3.2, 5, 3.6),
            polygon(6, 4.2, 8.6, 3.2, 8.6, 6.8, 6, 5.8),
        ]
