"""Three-phase socket-outlet: three strokes on the stem."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END, socket_outlet, three_strokes
from asfitted.draw.symbols._sign import Declaration, Sign


class SocketThreePhase(Sign):
    """Three-phase socket-outlet: three strokes on the stem."""

    declaration = Declaration(
        name="socket_three_phase",
        legend="Three-phase socket-outlet (five pin)",
        group="accessories",
        standard=True,
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *socket_outlet(4.8),
            *three_strokes(),
        ]
