"""Twin socket-outlet: the figure is the number of gangs."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END, socket_outlet
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import letters


class SocketTwin(Sign):
    """Twin socket-outlet: the figure is the number of gangs."""

    declaration = Declaration(
        name="socket_twin",
        legend="Twin socket-outlet (two gang)",
        group="accessories",
        standard=True,
        iec_60617="11-13-02 / S00458",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *socket_outlet(),
            letters(5, 9.2, "2"),
        ]
