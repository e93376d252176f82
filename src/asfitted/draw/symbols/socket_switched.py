"""Switched socket-outlet: with the stroke of a switch."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END, socket_outlet
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import line


class SocketSwitched(Sign):
    """Switched socket-outlet: with the stroke of a switch."""

    declaration = Declaration(
        name="socket_switched",
        legend="Switched socket-outlet",
        group="accessories",
        standard=True,
        iec_60617="11-13-06 / S00462",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *socket_outlet(),
            line(6.5, 4, 8.6, 1, 9.6, 1.7),
        ]
