"""How the walls of the brief are set: tables whole, sketches large, and no page more for it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.layout.brief.flow import Block, Rows, pages_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    Blocks = list[Block | Rows]


def best_walls(
    before: Sequence[Block | Rows],
    walls: Sequence[Blocks],
    larger: Sequence[Blocks | None],
    after: Sequence[Block | Rows],
    room_mm: float,
) -> list[Blocks]:
    """Return the blocks of each wall, those changed that cost no page.

    First each table is kept on one page, then each sketch is drawn larger, wall by wall.

    Args:
        before: what stands on the pages before the walls.
        walls: the blocks of each wall, drawn small and its table parted where a page ends.
        larger: the same with a larger sketch, None where there is none.
        after: what stands after the walls.
        room_mm: height of a page.

    Raises:
        DoesNotFitError: no page holds one of the blocks.
    """

    def pages(shown: Sequence[Blocks]) -> int:
        return len(pages_of([*before, *(b for wall in shown for b in wall), *after], room_mm))

    best = list(walls)
    most = pages(best)
    for i, wall in enumerate(walls):
        tried = [*best[:i], _whole(wall), *best[i + 1 :]]
        best = tried if pages(tried) <= most else best
    for i, large in enumerate(larger):
        if large is None:
            continue
        one = _whole(large) if _is_whole(best[i]) else large
        tried = [*best[:i], one, *best[i + 1 :]]
        best = tried if pages(tried) <= most else best
    return best


def _whole(blocks: Blocks) -> Blocks:
    """Return the blocks of a wall with its table kept on one page."""
    return [replace(one, whole=True) if isinstance(one, Rows) else one for one in blocks]


def _is_whole(blocks: Blocks) -> bool:
    return any(isinstance(one, Rows) and one.whole for one in blocks)
