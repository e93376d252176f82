"""Three-phase socket-outlet with its own RCD: the ring is round the stem."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END, socket_outlet, three_strokes
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle


class SocketThreePhaseRcd(Sign):
    """Three-phase socket-outlet with its own RCD: the ring is round the stem."""

    declaration = Declaration(
        name="socket_three_phase_rcd",
        legend="Three-phase socket-outlet (five pin) with RCD inside",
        group="accessories",
        standard=False,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *socket_outlet(6.5),
            *three_strokes(),
            circle(5, 5, 0.9),
        ]
