"""Front of a five-pin socket-outlet: key at the foot, earth contact the largest."""

from __future__ import annotations

import math
from typing import Any

from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.draw.symbols._strokes import circle, rect

#: Directions of L1, L2, L3 and N, clockwise on paper from earth at the foot; 72 degrees apart.
CONTACTS = tuple(math.radians(90 + 72 * step) for step in range(1, 5))


class SocketFaceFivePin(Sign):
    """Front of a five-pin socket-outlet: key at the foot, earth contact the largest."""

    declaration = Declaration(
        name="socket_face_five_pin",
        legend="Front of a five-pin socket-outlet, key at the foot",
        group="accessories",
        standard=False,
    )

    def strokes(self) -> list[Any]:
        """Return the segments."""
        return [
            circle(5, 5, 4.4),
            rect(4.4, 9.2, 1.2, 0.7),
            circle(5, 7.8, 0.75),
            *(circle(5 + 2.8 * math.cos(a), 5 + 2.8 * math.sin(a), 0.5) for a in CONTACTS),
        ]
