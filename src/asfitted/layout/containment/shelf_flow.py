"""Views side by side on shelves over as many sheets as needed; tables in what is left."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.geometry import Box, Point
from asfitted.layout.frame import usable_box
from asfitted.layout.lettering import VIEW, text_item
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
HEADING_MM = 9.0  # at the top of a sheet that holds tables alone
LEAST_BESIDE = 0.85  # of a column: beside a view a table may be so much narrower
LEAST_ROWS = 2  # no fewer rows of a table stand at the foot of a column


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
    caption_mm: float = 0.0  # kept free over the header, for words of the sheet kind

    def items(self) -> tuple[Item, ...]:
        """Return the items of these rows under their header."""
        at = self.slot.at.moved(dy=self.caption_mm)
        return table_items(f"{self.ident}:{self.rows.start}", self.fitted, self.rows, at)[0]


@dataclass(frozen=True)
class WaitingTable:
    """A table that is to stand wherever there is room, best on the sheet of its view."""

    ident: str
    table: Table
    page: int  # of its view; -1: any
    caption_mm: float


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
    _waiting: list[WaitingTable] = field(default_factory=list)
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

    def place(
        self,
        width: float,
        height: float,
        *,
        after: Slot | None = None,
        under_heading: bool = False,
    ) -> Slot:
        """Return the place of a view: on the first shelf with room, else a new one.

        Args:
            width: of the view, mm.
            height: of the view, mm.
            after: place of the view that is to come before it.
            under_heading: whether it leaves room for a heading where it begins a sheet.

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
            shelf = self._new_shelf(height, HEADING_MM if under_heading else 0.0)
        slot = Slot(shelf.page, Point(shelf.x, shelf.top))
        shelf.x += width + GAP_X
        return slot

    def _new_shelf(self, height: float, heading_mm: float) -> Shelf:
        """Return a new shelf under the last one, or on a new sheet."""
        last = self._shelves[-1] if self._shelves else None
        page = last.page if last else 0
        top = last.top + last.height + GAP_Y if last else self.area.y0
        if top + height > self.area.y1 + 1e-6:
            page, top = page + 1, self.area.y0 + heading_mm
        shelf = Shelf(page, top, height, self.area.x0)
        self._shelves.append(shelf)
        return shelf

    def add_table(
        self, ident: str, table: Table, *, page: int = -1, caption_mm: float = 0.0
    ) -> None:
        """Note a table that is to stand wherever there is room after the views.

        Args:
            ident: of its items.
            table: its rows.
            page: the sheet, from 0, on which it is wanted most: that of its view.
            caption_mm: kept free over each part of it.
        """
        self._waiting.append(WaitingTable(ident, table, page, caption_mm))

    def table_mm(self, table: Table) -> float:
        """Return the height of a whole table in a column."""
        fitted = fit_table(table, self.column_mm, part_words=True)
        return fitted.header_mm + sum(fitted.row_mm)

    def set_table(self, ident: str, table: Table, slot: Slot) -> None:
        """Put a whole table at a place that is kept for it."""
        fitted = fit_table(table, self.column_mm, part_words=True)
        self.tables.append(PlacedTable(ident, fitted, range(len(table.rows)), slot))

    def finish(self) -> None:
        """Set all tables into what the shelves leave free, and on more sheets.

        Those that find room on the sheet of their view go there; then the others, in order.
        """
        self._free = list(self._what_is_free())
        self._next_page = max((shelf.page for shelf in self._shelves), default=-1) + 1
        for waiting in [one for one in self._waiting if not self._set_beside(one)]:
            self._set(waiting)
        self._waiting = []

    def _what_is_free(self) -> Iterator[tuple[int, Box]]:
        """Yield columns at the right end of each shelf and under the last one of each sheet.

        Beside the last shelf of a sheet a column goes down to the title block.
        """
        for i, shelf in enumerate(self._shelves):
            x, bottom = shelf.x, shelf.top + shelf.height
            is_last = i + 1 == len(self._shelves) or self._shelves[i + 1].page > shelf.page
            foot, under_to = (self.area.y1 if is_last else bottom), self.area.x1
            while x + LEAST_BESIDE * self.column_mm <= self.area.x1 + 1e-6:
                right = min(x + self.column_mm, self.area.x1)
                under_to = min(under_to, x - GAP_X)
                yield shelf.page, Box(x, shelf.top, right, foot)
                x += self.column_mm + GAP_X
            if is_last and self.area.y1 - bottom - TABLE_GAP_MM >= LEAST_FREE_MM:
                for box in self._columns_from(bottom + TABLE_GAP_MM):
                    if box.x1 <= under_to + 1e-6:
                        yield shelf.page, box

    def _columns_from(self, top: float) -> list[Box]:
        step = self.column_mm + GAP_X
        lefts = [self.area.x0 + i * step for i in range(self.columns)]
        return [Box(x, top, x + self.column_mm, self.area.y1) for x in lefts]

    def _set_beside(self, waiting: WaitingTable) -> bool:
        """Put a whole table on the sheet of its view, and tell whether it finds room there."""
        for index, (page, box) in enumerate(self._free):
            fitted = fit_table(waiting.table, box.width, part_words=True)
            height = waiting.caption_mm + fitted.header_mm + sum(fitted.row_mm)
            if page == waiting.page and height <= box.height + 1e-6:
                rows, slot = range(len(fitted.row_mm)), Slot(page, Point(box.x0, box.y0))
                whole = PlacedTable(waiting.ident, fitted, rows, slot, waiting.caption_mm)
                self._take(index, whole)
                return True
        return False

    def _set(self, waiting: WaitingTable) -> None:
        """Put a table into the first free places that hold a part of it, each after the last.

        Places that are too low for it stay for the tables that follow.
        """
        start, index, rows = 0, 0, len(waiting.table.rows)
        while start < rows:
            if index == len(self._free):
                columns = self._columns_from(self.area.y0 + HEADING_MM)
                self._free += [(self._next_page, box) for box in columns]
                self._next_page += 1
            part = self._part(waiting, index, start)
            if part is None:
                index += 1
                continue
            self._take(index, part)
            start = part.rows.stop

    def _part(self, waiting: WaitingTable, index: int, start: int) -> PlacedTable | None:
        """Return what of a table, from a row on, a free place holds; None where it is too low.

        Raises:
            DoesNotFitError: one row is higher than a sheet.
        """
        page, box = self._free[index]
        fitted = fit_table(waiting.table, box.width, part_words=True)
        is_whole = box.height >= self.area.height - HEADING_MM - 1e-6
        room = box.height - waiting.caption_mm
        end = _rows_until(fitted, start, room, 1 if is_whole else LEAST_ROWS)
        if end == start:
            if is_whole:
                raise DoesNotFitError(
                    f"row {start + 1} of {waiting.ident} finds no room on a sheet"
                )
            return None
        slot = Slot(page, Point(box.x0, box.y0))
        return PlacedTable(waiting.ident, fitted, range(start, end), slot, waiting.caption_mm)

    def _take(self, index: int, part: PlacedTable) -> None:
        """Put a part of a table into a free place; what is left under it stays free."""
        page, box = self._free[index]
        self.tables.append(part)
        height = part.caption_mm + part.fitted.header_mm
        height += sum(part.fitted.row_mm[i] for i in part.rows)
        rest = Box(box.x0, box.y0 + height + TABLE_GAP_MM, box.x1, box.y1)
        self._free[index : index + 1] = [(page, rest)] if rest.height >= LEAST_TABLE_MM else []


def tables_heading(words: str, paper: Paper) -> Item:
    """Return the heading of a sheet that holds tables alone, at its top."""
    area = usable_box(paper)
    at = Point(area.x0, area.y0 + VIEW)
    return text_item("tables:heading", words, at, VIEW, bold=True)


def _rows_until(fitted: FittedTable, start: int, room: float, least: int) -> int:
    """Return up to which row a table fits a height; the row it starts at where very few would."""
    end, height = start, fitted.header_mm
    while end < len(fitted.row_mm) and height + fitted.row_mm[end] <= room + 1e-6:
        height += fitted.row_mm[end]
        end += 1
    is_few = end - start < least and end < len(fitted.row_mm)
    return start if is_few else end
