"""A board or some of its ways as they stand on one sheet, and how that sheet is fitted."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.room import ColumnWords, Rows
    from asfitted.layout.single_line.sheet_rooms import SheetRoom
    from asfitted.layout.single_line.tree import Column

SUPPLY = "supply"
BREAK_MM = 14.0  # room for the mark where a busbar goes on on another sheet


@dataclass(frozen=True)
class Part:
    """A board, or those of its ways that stand on one sheet."""

    tag: str
    columns: tuple[Column, ...]
    words: tuple[ColumnWords, ...]
    number: int = 1
    count: int = 1

    @property
    def key(self) -> str:
        """The board's tag, with the number of the part when there are several."""
        return self.tag if self.count == 1 else f"{self.tag}/{self.number}"

    @property
    def breaks(self) -> int:
        """How many ends of its busbar go on on another sheet."""
        return int(self.number > 1) + int(self.number < self.count)


@dataclass(frozen=True)
class SheetFit:
    """What one sheet holds and the pitch and rows at which it fits."""

    parts: tuple[Part, ...]
    room: SheetRoom
    has_intake: bool
    pitch_mm: float
    rows: Rows
    band_mm: float  # above the enclosures: intake or flags

    @property
    def columns(self) -> int:
        """How many columns stand on the sheet."""
        return sum(len(part.columns) for part in self.parts)


@dataclass(frozen=True)
class Shown:
    """What stands on one sheet, or on all sheets that share a legend."""

    parts: tuple[Part, ...]
    has_intake: bool = False
    has_overview: bool = False


def direct_board(model: Model, parts: Sequence[Part], *, has_intake: bool) -> str:
    """Return the board that hangs straight from the intake of this sheet, or ""."""
    fed = [board.tag for board in model.installation.boards.values() if board.fed_by == SUPPLY]
    if has_intake and parts and parts[0].number == 1 and fed == [parts[0].tag]:
        return parts[0].tag
    return ""
