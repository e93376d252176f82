"""Socket-outlet: a half circle, crown to the supply, bar for the protective contact."""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._parts import AT_END, socket_outlet
from asfitted.draw.symbols._sign import Declaration, Sign


class Socket(Sign):
    """Socket-outlet: a half circle, crown to the supply, bar for the protective contact."""

    declaration = Declaration(
        name="socket",
        legend="Socket-outlet",
        group="accessories",
        standard=True,
        iec_60617="11-13-04 / S00460",
    )
    wire_ends = AT_END

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            *socket_outlet(),
        ]
