"""Switch-fuse: a switch in series with a separate fixed fuse."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, rect


class SwitchFuse(Sign):
    """Switch-fuse: a switch in series with a separate fixed fuse."""

    declaration = Declaration(
        name="switch_fuse",
        legend="Switch-fuse (switch in series with a fixed fuse)",
        group="protection",
        standard=True,
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(5, 0, 5, 1.6),
            line(5, 10, 5, 4.6, 3.1, 1.6),
            line(3.9, 1.6, 6.1, 1.6),
            rect(4.1, 5.4, 1.8, 3.6),
        ]
