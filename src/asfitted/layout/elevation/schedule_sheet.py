"""Notes and tables of all walls on sheets of their own, for elevations that lack room."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.elevation.arrangement import USABLE, title_top
from asfitted.layout.elevation.panels import GAP_X, GAP_Y, HEAD_MM, NotesPanel
from asfitted.layout.lettering import TAG, text_item
from asfitted.layout.table import FittedTable, fit_table, paginate, table_items
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.elevation.panels import TablePanel
    from asfitted.layout.sheet_layout import Item

COLUMNS = 2
NOTES_TITLE = "Notes for all elevations"
LEAST_PART_MM = 25.0  # rows of a table that may stand alone at the foot of a column
COLUMN_MM = (USABLE.width - GAP_X * (COLUMNS - 1)) / COLUMNS


@dataclass(frozen=True)
class _Piece:
    """A part of a table at its place: page, column top left corner, rows."""

    page: int
    at: Point
    ident: str
    title: str
    fitted: FittedTable
    rows: range


def schedule_pages(notes: Sequence[str], tables: Sequence[TablePanel]) -> int:
    """Return how many sheets the notes and tables of all walls fill."""
    pieces = _flow(tables, _notes_height(notes))
    return max((piece.page for piece in pieces), default=0) + 1


def lay_out_schedules(
    notes: Sequence[str], tables: Sequence[TablePanel], page: int
) -> tuple[Item, ...]:
    """Return the items of one page: the notes first, then tables column after column."""
    items: list[Item] = []
    if page == 0:
        items += NotesPanel(tuple(notes), NOTES_TITLE).items(Point(USABLE.x0, USABLE.y0), COLUMN_MM)
    for piece in _flow(tables, _notes_height(notes)):
        if piece.page != page:
            continue
        head = piece.at.moved(dy=TAG)
        items.append(text_item(f"{piece.ident}:title", piece.title, head, TAG, bold=True))
        at = piece.at.moved(dy=HEAD_MM)
        made, _ = table_items(piece.ident, piece.fitted, piece.rows, at)
        items.extend(made)
    return tuple(items)


def _notes_height(notes: Sequence[str]) -> float:
    return (NotesPanel(tuple(notes)).height(COLUMN_MM) or 0.0) + GAP_Y


def _columns(index: int) -> tuple[int, Box]:
    """Return the page and box of the n-th column; the last of a page ends above the title block."""
    page, column = divmod(index, COLUMNS)
    x = USABLE.x0 + column * (COLUMN_MM + GAP_X)
    low = title_top() if x + COLUMN_MM > title_block_box("A3").x0 else USABLE.y1
    return page, Box(x, USABLE.y0, x + COLUMN_MM, low)


def _flow(tables: Sequence[TablePanel], notes_mm: float) -> list[_Piece]:
    """Return every table cut into parts that fill column after column, below the notes."""
    pieces: list[_Piece] = []
    index, y = 0, USABLE.y0 + notes_mm
    next_mm = title_top() - USABLE.y0 - HEAD_MM
    for panel in tables:
        fitted = fit_table(panel.table, COLUMN_MM)
        whole = HEAD_MM + fitted.header_mm + sum(fitted.row_mm)
        start = HEAD_MM + fitted.header_mm + fitted.row_mm[0]
        if y + min(whole, start + LEAST_PART_MM) > _columns(index)[1].y1:
            index, y = index + 1, USABLE.y0
        parts = paginate(fitted, _columns(index)[1].y1 - y - HEAD_MM, next_mm)
        for n, rows in enumerate(parts):
            if n:
                index, y = index + 1, USABLE.y0
            page, box = _columns(index)
            title = panel.title + (" (continued)" if n else "")
            ident = f"{panel.title}:{n}" if n else panel.title
            pieces.append(_Piece(page, Point(box.x0, y), ident, title, fitted, rows))
            y += HEAD_MM + fitted.header_mm + sum(fitted.row_mm[i] for i in rows) + GAP_Y
    return pieces
