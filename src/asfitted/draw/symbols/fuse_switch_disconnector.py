"""Fuse switch-disconnector: fuse on the blade, bar and load-break circle."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import IN_LINE, fuse_on_blade, isolating_bar, load_break_circle
from asfitted.draw.symbols._sign import Declaration, Sign


class FuseSwitchDisconnector(Sign):
    """Fuse switch-disconnector: fuse on the blade, bar and load-break circle."""

    declaration = Declaration(
        name="fuse_switch_disconnector",
        legend="Fuse switch-disconnector (fused isolator you may open under load)",
        group="protection",
        standard=True,
        iec_60617="07-21-09 / S00370",
    )
    wire_ends = IN_LINE

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *fuse_on_blade(2.9),
            isolating_bar(2.9),
            load_break_circle(),
        ]
