"""Views side by side on shelves over as many sheets as needed; tables in what is left."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.geometry import Box, Point
from asfitted.layout.frame import usable_box
from asfitted.layout.table import fit_table, table_items
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.sheet_layout import Item, Paper
    from asfitted.layout.table import FittedTable, Table

GAP_X, GAP_Y = 8.0, 7.0
TABLE_GAP_MM = 4.0
CLEAR_OF_TITLE_MM = 4.0
LEAST_FREE_MM = 22.0  # lower room than this under a shelf is left empty
LEAST_TABLE_MM = 14.0  # and this under a table
LEAST_ROWS = 3  # no fewer rows of a table stand at the foot of a column


@dataclass(frozen=True)
class Slot:
    """Where a block stands: which sheet (from 0) and its top left corner."""

    page: int
    at: Point


@dataclass(frozen=True)
class PlacedTable:
    """Rows of a table in their place."""

    ident: str
    fitted: FittedTable
    rows: range
    slot: Slot

    def items(self) -> tuple[Item, ...]:
        """Return the items of these rows under their header."""
        return table_items(f"{self.ident}:{self.rows.start}", self.fitted, self.rows, self.slot.at)[
            0
        ]


@dataclass
class Shelf:
    """A row of views: on which sheet, its top, how high it is, and where it is free from."""

    page: int
    top: float
    height: float
    x: float


@dataclass
class ShelfFlow:
    """Gives views and tables their places in reading order. Same blocks, same places.

    A view goes on the first shelf with room for it. Tables wait until all views are placed, then
    fill what is free beside and under the shelves.
    """

    paper: Paper
    columns: int  # of tables
    tables: list[PlacedTable] = field(default_factory=list)
    _shelves: list[Shelf] = field(default_factory=list)
    _waiting: list[tuple[str, Table]] = field(default_factory=list)
    _free: list[tuple[int, Box]] = field(default_factory=list)  # in reading order
    _next_page: int = 0

    @property
    def area(self) -> Box:
        """What of the sheet may be used: above the title block."""
        box = usable_box(self.paper)
        foot = title_block_box(self.paper).y0 - CLEAR_OF_TITLE_MM
        return Box(box.x0, box.y0, box.x1, foot)

    @property
    def column_mm(self) -> float:
        """Width of a column of tables."""
        return (self.area.width - GAP_X * (self.columns - 1)) / self.columns

    def place(self, width: float, height: float, *, after: Slot | None = None) -> Slot:
        """Return the place of a view: on the first shelf with room, else a new one.

        Args:
            width: of the view, mm.
            height: of the view, mm.
            after: place of the view that is to come before it.

        Raises:
            DoesNotFitError: the view is larger than any sheet.
        """
        if height > self.area.height + 1e-6 or width > self.area.width + 1e-6:
            raise DoesNotFitError(
                f"a view of {width:.0f} × {height:.0f} mm finds no room on {self.paper}"
            )
        first = (after.page, after.at.y) if after else (0, 0.0)
        for shelf in self._shelves:
            is_later = (shelf.page, shelf.top) >= first
            fits = shelf.x + width <= self.area.x1 + 1e-6 and height <= shelf.height + 1e-6
            if is_later and fits:
                break
        else:
            shelf = self._new_shelf(height)
        slot = Slot(shelf.page, Point(shelf.x, shelf.top))
        shelf.x += width + GAP_X
        return slot

    def _new_shelf(self, height: float) -> Shelf:
        """Return a new shelf under the last one, or on a new sheet."""
        last = self._shelves[-1] if self._shelves else None
        page = last.page if last else 0
        top = last.top + last.height + GAP_Y if last else self.area.y0
        if top + height > self.area.y1 + 1e-6:
            page, top = page + 1, self.area.y0
        shelf = Shelf(page, top, height, self.area.x0)
        self._shelves.append(shelf)
        return shelf

    def add_table(self, ident: str, table: Table) -> None:
        """Note a table that is to stand wherever there is room after the views."""
        self._waiting.append((ident, table))

    def table_mm(self, table: Table) -> float:
        """Return the height of a whole table in a column."""
        fitted = fit_table(table, self.column_mm, part_words=True)
        return fitted.header_mm + sum(fitted.row_mm)

    def set_table(self, ident: str, table: Table, slot: Slot) -> None:
        """Put a whole table at a place that is kept for it."""
        fitted = fit_table(table, self.column_mm, part_words=True)
        self.tables.append(PlacedTable(ident, fitted, range(len(table.rows)), slot))

    def finish(self) -> None:
        """Set all tables into what the shelves leave free, and on more sheets."""
        self._free = list(self._what_is_free())
        self._next_page = max((shelf.page for shelf in self._shelves), default=-1) + 1
        for ident, table in self._waiting:
            self._set(ident, fit_table(table, self.column_mm, part_words=True))
        self._waiting = []

    def _what_is_free(self) -> Iterator[tuple[int, Box]]:
        """Yield columns at the right end of each shelf and under the last one of each sheet."""
        for i, shelf in enumerate(self._shelves):
            x, bottom = shelf.x, shelf.top + shelf.height
            while x + self.column_mm <= self.area.x1 + 1e-6:
                yield shelf.page, Box(x, shelf.top, x + self.column_mm, bottom)
                x += self.column_mm + GAP_X
            is_last = i + 1 == len(self._shelves) or self._shelves[i + 1].page > shelf.page
            if is_last and self.area.y1 - bottom - GAP_Y >= LEAST_FREE_MM:
                yield from ((shelf.page, box) for box in self._columns_from(bottom + GAP_Y))

    def _columns_from(self, top: float) -> list[Box]:
        step = self.column_mm + GAP_X
        lefts = [self.area.x0 + i * step for i in range(self.columns)]
        return [Box(x, top, x + self.column_mm, self.area.y1) for x in lefts]

    def _set(self, ident: str, fitted: FittedTable) -> None:
        """Put a table into the first free places that hold a part of it, each after the last.

        Places that are too low for it stay for the tables that follow.
        """
        start, index = 0, 0
        while start < len(fitted.row_mm):
            if index == len(self._free):
                columns = self._columns_from(self.area.y0)
                self._free += [(self._next_page, box) for box in columns]
                self._next_page += 1
            page, box = self._free[index]
            is_whole = box.height >= self.area.height - 1e-6
            end, height = _rows_until(fitted, start, box.height, 1 if is_whole else LEAST_ROWS)
            if end == start:
                if is_whole:
                    raise DoesNotFitError(f"row {start + 1} of {ident} finds no room on a sheet")
                index += 1
                continue
            slot = Slot(page, Point(box.x0, box.y0))
            self.tables.append(PlacedTable(ident, fitted, range(start, end), slot))
            rest = Box(box.x0, box.y0 + height + TABLE_GAP_MM, box.x1, box.y1)
            self._free[index : index + 1] = [(page, rest)] if rest.height >= LEAST_TABLE_MM else []
            start = end


def _rows_until(fitted: FittedTable, start: int, room: float, least: int) -> tuple[int, float]:
    """Return up to which row a table fits a height, and the height; none rather than very few."""
    end, height = start, fitted.header_mm
    while end < len(fitted.row_mm) and height + fitted.row_mm[end] <= room + 1e-6:
        height += fitted.row_mm[end]
        end += 1
    is_few = end - start < least and end < len(fitted.row_mm)
    return (start, 0.0) if is_few else (end, height)
