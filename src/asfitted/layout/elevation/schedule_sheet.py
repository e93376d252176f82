"""Notes and tables of all walls on sheets of their own, for elevations that lack room."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.geometry import Box, Point
from asfitted.layout.elevation.panels import GAP_X, GAP_Y, HEAD_MM, NotesPanel
from asfitted.layout.elevation.paper_room import room_on, title_room
from asfitted.layout.lettering import TAG, shortened, text_item
from asfitted.layout.table import FittedTable, fit_table, paginate, table_items

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.elevation.panels import TablePanel
    from asfitted.layout.sheet_layout import Item, Paper
    from asfitted.layout.table import Table

MOST_COLUMNS = 2
NOTES_TITLE = "Notes for all elevations"
LEAST_PART_MM = 25.0  # rows of a table that may stand alone at the foot of a column
LONGEST_WORD = 16  # letters of a word in a table that is too wide otherwise


@dataclass(frozen=True)
class _Piece:
    """A part of a table, or some notes, at its place: page, column top left corner, rows."""

    page: int
    at: Point
    ident: str
    title: str
    content: FittedTable | NotesPanel
    rows: range


@dataclass
class _Flow:
    """Columns filled one after another, page after page."""

    paper: Paper
    columns: int
    index: int = 0
    y: float = 0.0

    @property
    def width_mm(self) -> float:
        """Width of a column."""
        room = room_on(self.paper)
        return (room.width - GAP_X * (self.columns - 1)) / self.columns

    @property
    def box(self) -> Box:
        """The column that is being filled; one over the title block ends above it."""
        room, title = room_on(self.paper), title_room(self.paper)
        x = room.x0 + (self.index % self.columns) * (self.width_mm + GAP_X)
        low = title.y0 if x + self.width_mm > title.x0 else room.y1
        return Box(x, room.y0, x + self.width_mm, low)

    @property
    def page(self) -> int:
        """The page that is being filled."""
        return self.index // self.columns

    @property
    def least_mm(self) -> float:
        """Height of the lowest column."""
        return title_room(self.paper).y0 - room_on(self.paper).y0

    def turn(self) -> None:
        """Go on to the next column."""
        self.index, self.y = self.index + 1, room_on(self.paper).y0


def schedule_pages(notes: Sequence[str], tables: Sequence[TablePanel], paper: Paper = "A3") -> int:
    """Return how many sheets the notes and tables of all walls fill."""
    return max((piece.page for piece in _flow(notes, tables, paper)), default=0) + 1


def page_of_table(
    notes: Sequence[str], tables: Sequence[TablePanel], ident: str, paper: Paper = "A3"
) -> int:
    """Return the page, from 0, on which the first rows of a table stand."""
    return next(p.page for p in _flow(notes, tables, paper) if p.ident == ident)


def lay_out_schedules(
    notes: Sequence[str], tables: Sequence[TablePanel], page: int, paper: Paper = "A3"
) -> tuple[Item, ...]:
    """Return the items of one page: the notes first, then tables column after column."""
    items: list[Item] = []
    for piece in _flow(notes, tables, paper):
        if piece.page != page:
            continue
        if isinstance(piece.content, NotesPanel):
            items += piece.content.items(piece.at, _width(piece))
            continue
        head = piece.at.moved(dy=TAG)
        title = shortened(piece.title, sum(piece.content.widths_mm), TAG, bold=True)
        items.append(text_item(f"{piece.ident}:title", title, head, TAG, bold=True))
        at = piece.at.moved(dy=HEAD_MM)
        made, _ = table_items(piece.ident, piece.content, piece.rows, at)
        items.extend(made)
    return tuple(items)


def _width(piece: _Piece) -> float:
    return float(piece.rows.stop)  # notes: the width of their column, whole mm


def _flow(notes: Sequence[str], tables: Sequence[TablePanel], paper: Paper) -> list[_Piece]:
    """Return notes and tables cut into parts that fill column after column."""
    flow = _Flow(paper, _columns(tables, paper), y=room_on(paper).y0)
    pieces = _flow_notes(flow, notes)
    for panel in tables:
        pieces += _flow_table(flow, panel)
    return pieces


def _columns(tables: Sequence[TablePanel], paper: Paper) -> int:
    """Return how many columns all tables have room in."""
    for columns in range(MOST_COLUMNS, 1, -1):
        width = _Flow(paper, columns).width_mm
        if all(_fits(panel.table, width) for panel in tables):
            return columns
    return 1


def _fits(table: Table, width_mm: float) -> bool:
    try:
        fit_table(table, width_mm)
    except DoesNotFitError:
        return False
    return True


def _flow_notes(flow: _Flow, notes: Sequence[str]) -> list[_Piece]:
    pieces: list[_Piece] = []
    left, first, width = tuple(notes), 1, int(flow.width_mm)
    while left:
        count = len(left)
        title = NOTES_TITLE if first == 1 else f"{NOTES_TITLE} (continued)"
        while count > 1 and _notes(left[:count], title, first).height_mm(width) > _left(flow):
            count -= 1
        panel = _notes(left[:count], title, first)
        pieces.append(_Piece(flow.page, Point(flow.box.x0, flow.y), "", title, panel, range(width)))
        flow.y += panel.height_mm(width) + GAP_Y
        left, first = left[count:], first + count
        if left:
            flow.turn()
    return pieces


def _notes(notes: Sequence[str], title: str, first: int) -> NotesPanel:
    return NotesPanel(tuple(notes), title, first=first)


def _left(flow: _Flow) -> float:
    return flow.box.y1 - flow.y


def _flow_table(flow: _Flow, panel: TablePanel) -> list[_Piece]:
    """Return a table in parts, from where the flow has come to."""
    table = panel.table if _fits(panel.table, flow.width_mm) else _with_short_words(panel.table)
    fitted = fit_table(table, flow.width_mm)
    whole = HEAD_MM + fitted.header_mm + sum(fitted.row_mm)
    start = HEAD_MM + fitted.header_mm + fitted.row_mm[0]
    if min(whole, start + LEAST_PART_MM) > _left(flow):
        flow.turn()
    pieces = []
    parts = paginate(fitted, _left(flow) - HEAD_MM, flow.least_mm - HEAD_MM)
    for n, rows in enumerate(parts):
        if n:
            flow.turn()
        title = panel.title + (" (continued)" if n else "")
        ident = f"{panel.ident}:{n}" if n else panel.ident
        at = Point(flow.box.x0, flow.y)
        pieces.append(_Piece(flow.page, at, ident, title, fitted, rows))
        flow.y += HEAD_MM + fitted.header_mm + sum(fitted.row_mm[i] for i in rows) + GAP_Y
    return pieces


def _with_short_words(table: Table) -> Table:
    """Return a table whose columns may all wrap and whose long words are broken."""
    columns = tuple(replace(column, wraps=True) for column in table.columns)
    rows = tuple(tuple(_broken(cell) for cell in row) for row in table.rows)
    return replace(table, columns=columns, rows=rows)


def _broken(cell: str) -> str:
    words = []
    for word in cell.split(" "):
        words += [word[i : i + LONGEST_WORD] for i in range(0, len(word), LONGEST_WORD)] or [word]
    return " ".join(words)
