"""Labels in a row or column moved apart just enough, in their order, as near as may be to home."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence


def spread(wanted: Sequence[float], pitch: float, low: float, high: float) -> list[float]:
    """Return places at least ``pitch`` apart between ``low`` and ``high``, nearest to those wanted.

    Neighbours that are too near become a block about their common middle; blocks that then touch
    join. Where all of them do not fit, they share the room equally.

    Args:
        wanted: where each label would like to be, ascending, mm.
        pitch: least distance of neighbours, mm.
        low: least place, mm.
        high: greatest place, mm.
    """
    if not wanted:
        return []
    if len(wanted) > 1:
        pitch = min(pitch, (high - low) / (len(wanted) - 1))
    blocks: list[list[float]] = []
    for place in wanted:
        blocks.append([place])
        while len(blocks) > 1 and _start(blocks[-1], pitch, low, high) < (
            _start(blocks[-2], pitch, low, high) + pitch * len(blocks[-2]) - 1e-9
        ):
            last = blocks.pop()
            blocks[-1].extend(last)
    return [
        _start(block, pitch, low, high) + pitch * i for block in blocks for i in range(len(block))
    ]


def _start(block: Sequence[float], pitch: float, low: float, high: float) -> float:
    """Return the first place of a block: centred on what its members want, inside the limits."""
    span = pitch * (len(block) - 1)
    start = sum(block) / len(block) - span / 2
    return min(max(start, low), high - span)
