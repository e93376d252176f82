"""Flag where a line goes on elsewhere."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line, polygon


class OffPage(Sign):
    """Flag where a line goes on elsewhere."""

    declaration = Declaration(
        name="off_page",
        legend="Line goes on elsewhere (the words say which sheet and zone)",
        group="marks",
        standard=False,
    )
    wire_ends = ("left",)

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            line(0, 5, 3, 5),
            polygon(3, 2.5, 7.5, 2.5, 9.8, 5, 7.5, 7.5, 3, 7.5),
        ]
