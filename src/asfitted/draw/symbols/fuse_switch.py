"""Fuse-switch: the fuse is the moving blade."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, fuse_on_blade
from asfitted.draw.symbols._sign import Declaration, Sign


class FuseSwitch(Sign):
    """Fuse-switch: the fuse is the moving blade."""

    declaration = Declaration(
        name="fuse_switch",
        legend="Fuse-switch (the fuse moves with the blade)",
        group="protection",
        standard=True,
        iec_60617="07-21-07 / S00368",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *fuse_on_blade(),
        ]
