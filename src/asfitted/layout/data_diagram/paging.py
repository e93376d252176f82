"""Shares the blocks out over sheets: cut between devices only, each part with its place."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from asfitted.layout.data_diagram.hard_wrap import hard_wrap
from asfitted.layout.data_diagram.measuring import LINE
from asfitted.layout.lettering import BODY

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.data_diagram.blocks import Block
    from asfitted.layout.data_diagram.columns import Columns
    from asfitted.layout.data_diagram.measuring import MeasuredRow

PAD_MM = 3.0
FLAG_MM = 9.0  # room for a flag where a block is cut
BLOCK_GAP_MM = 4.0
PLACE_GAP_MM = 7.0  # between blocks that stand apart
MOST_SPREAD_MM = 8.0


@dataclass(frozen=True)
class Part:
    """Part of a block on one sheet; heights in mm from the top of the room for rows.

    ``heading`` names what the equipment stands in; it is empty where the part above says it.
    """

    block: Block
    rows: tuple[MeasuredRow, ...]
    number: int  # from 1
    goes_on: bool
    heading: tuple[str, ...]
    heading_y: float
    y0: float
    row_ys: tuple[float, ...]
    y1: float

    @property
    def comes_from(self) -> bool:
        """Whether an earlier sheet holds the rows before these."""
        return self.number > 1


@dataclass
class _Sheet:
    """One sheet while it is being filled."""

    parts: list[Part] = field(default_factory=list)
    y: float = 0.0


def share_out(
    blocks: Sequence[Block], room_mm: float, columns: Columns
) -> tuple[tuple[Part, ...], ...]:
    """Return the parts on each sheet. A row too high for a sheet still gets one of its own."""
    sheets = [_Sheet()]
    for block in blocks:
        start, number = 0, 1
        while True:
            part = _next_part(block, start, number, sheets[-1], room_mm, columns)
            if part is None:
                sheets.append(_Sheet())
                continue
            sheets[-1].parts.append(part)
            sheets[-1].y = part.y1 + BLOCK_GAP_MM
            start += len(part.rows)
            number += 1
            if not part.goes_on:
                break
    return tuple(_spread(sheet.parts, room_mm) for sheet in sheets if sheet.parts)


def _next_part(  # noqa: PLR0917 - where it starts and what it must fit
    block: Block, start: int, number: int, sheet: _Sheet, room_mm: float, columns: Columns
) -> Part | None:
    """Return as many rows of a block as the rest of a sheet holds, None to begin a new sheet."""
    heading, heading_y, y0 = _heading(block, sheet, columns)
    y = y0 + PAD_MM + (FLAG_MM if number > 1 else 0.0)
    waiting = block.rows[start:]
    taken: list[MeasuredRow] = []
    ys: list[float] = []
    for i, row in enumerate(waiting):
        more = FLAG_MM if i < len(waiting) - 1 else 0.0
        if y + row.height_mm + more > room_mm and (taken or sheet.parts):
            break
        taken.append(row)
        ys.append(y)
        y += row.height_mm
    goes_on = len(taken) < len(waiting)
    y += FLAG_MM if goes_on else 0.0
    y1 = max(y, y0 + PAD_MM + equipment_mm(block, number))
    if sheet.parts and ((waiting and not taken) or y1 > room_mm):
        return None
    return Part(block, tuple(taken), number, goes_on, heading, heading_y, y0, tuple(ys), y1)


def equipment_mm(block: Block, number: int) -> float:
    """Return the height of the words on a block's equipment; later parts repeat only its name."""
    if number > 1:
        return sum(one.head_mm + 3.0 for one in block.equipment)
    return sum(one.height_mm for one in block.equipment)


def _heading(block: Block, sheet: _Sheet, columns: Columns) -> tuple[tuple[str, ...], float, float]:
    """Return the heading of a block, its height on the sheet and where the block begins."""
    if sheet.parts and sheet.parts[-1].block.location == block.location:
        return (), sheet.y, sheet.y
    width = columns.right_x - columns.block_x - 6.0
    lines = tuple(hard_wrap(block.location, width, BODY, bold=True))
    y = sheet.y + (PLACE_GAP_MM - BLOCK_GAP_MM if sheet.parts else 0.0)
    return lines, y, y + len(lines) * LINE + 3.0


def _spread(parts: list[Part], room_mm: float) -> tuple[Part, ...]:
    """Return the parts of a sheet with what is left shared out under the rows."""
    count = sum(len(part.rows) for part in parts)
    spare = room_mm - parts[-1].y1
    extra = max(0.0, min(MOST_SPREAD_MM, spare / max(count, 1)))
    moved, down = [], 0.0
    for part in parts:
        ys = tuple(y + down + i * extra for i, y in enumerate(part.row_ys))
        end = down + len(part.rows) * extra
        moved.append(
            Part(
                part.block,
                part.rows,
                part.number,
                part.goes_on,
                part.heading,
                part.heading_y + down,
                part.y0 + down,
                ys,
                part.y1 + end,
            )
        )
        down = end
    return tuple(moved)
