"""What stands on a sheet of the distribution overview, and the measures that its forms share."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from asfitted.layout.single_line.room import SIGN

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.geometry import Box, Point
    from asfitted.layout.single_line.sheet_rooms import SheetRoom

PAD = 2.0
BAND_MM = 4.0  # hatched left edge of a board that is to be removed
PROTECTIVE_Y = 4.0  # a feed to its protective conductor
FLAG_MM, FLAG_ROW_MM = 7.0, 8.0  # in a box: where its ways are
CUT_MM = SIGN + 1.0  # above or below a box that is cut: its flag
CUT_X = 8.0  # left edge of a box to the flag where it is cut
FEED_Y = 5.0  # top of a box to the line that feeds it


@dataclass(frozen=True)
class PlacedBox:
    """A board on the overview, or as much of it as stands on one sheet.

    ``part`` counts from 1; ``goes_on`` tells that the next part is on another sheet (or lower on
    this one), ``beyond`` that all it feeds is there.
    """

    tag: str
    box: Box
    heading: tuple[str, ...]
    lines: tuple[str, ...]
    part: int
    goes_on: bool
    beyond: bool = False


@dataclass(frozen=True)
class PlacedFeed:
    """The level line from a board to one it feeds; ``has_way`` where its way stands over it."""

    parent: str
    child: str
    x0: float
    x1: float
    y: float
    has_way: bool = True
    apart_mm: float = PROTECTIVE_Y  # to its protective conductor


@dataclass(frozen=True)
class PlacedSpine:
    """The part of a board that goes down past all it feeds."""

    tag: str
    box: Box


@dataclass
class OverviewPage:
    """What a sheet of the overview holds while it is being filled."""

    boxes: list[PlacedBox] = field(default_factory=list)
    feeds: list[PlacedFeed] = field(default_factory=list)
    spines: list[PlacedSpine] = field(default_factory=list)
    flags: dict[str, Point] = field(default_factory=dict)


@dataclass(frozen=True)
class PlacedOverview:
    """One sheet of the overview. ``flags`` gives the middle of each flag by its name."""

    key: str
    room: SheetRoom
    boxes: tuple[PlacedBox, ...]
    feeds: tuple[PlacedFeed, ...]
    flags: Mapping[str, Point]
    has_intake: bool
    spines: tuple[PlacedSpine, ...] = ()

    @property
    def is_outline(self) -> bool:
        """Whether boards stand under one another, set in, not side by side."""
        return bool(self.spines)

    @property
    def foot_y(self) -> float:
        """How far down its boxes reach, mm from the top of the sheet."""
        boxes = [*(b.box for b in self.boxes), *(s.box for s in self.spines)]
        return max(box.y1 for box in boxes)


def overview_sheets(pages: Sequence[OverviewPage], room: SheetRoom) -> tuple[PlacedOverview, ...]:
    """Return filled pages as the sheets of the overview, the intake on the first."""
    key, many = "distribution-overview", len(pages) > 1
    return tuple(
        PlacedOverview(
            f"{key}/{i}" if many else key,
            room,
            tuple(page.boxes),
            tuple(page.feeds),
            page.flags,
            has_intake=i == 1,
            spines=tuple(page.spines),
        )
        for i, page in enumerate(pages, start=1)
    )
