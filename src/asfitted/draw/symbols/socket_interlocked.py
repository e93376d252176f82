"""Interlocked three-phase socket-outlet: switch stroke and the letters INT."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END, socket_outlet, three_strokes
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import letters, line


class SocketInterlocked(Sign):
    """Interlocked three-phase socket-outlet: switch stroke and the letters INT."""

    declaration = Declaration(
        name="socket_interlocked",
        legend="Three-phase socket-outlet with interlocked switch",
        group="accessories",
        standard=True,
        iec_60617="11-13-07 / S00463",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *socket_outlet(4.8),
            *three_strokes(),
            line(7, 4.8, 8.8, 2, 9.7, 2.6),
            letters(5, 9.9, "INT"),
        ]
