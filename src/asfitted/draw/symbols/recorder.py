"""Video recorder: a rectangle with letters."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import letters, line, rect


class Recorder(Sign):
    """Video recorder: a rectangle with letters."""

    declaration = Declaration(
        name="recorder",
        legend="Video recorder",
        group="data",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 2.5),
            rect(0.5, 2.5, 9, 5),
            letters(5, 6.25, "REC"),
        ]
