"""Turns a table into planned sheets: heading, table, notes, title block.

Notes stand left of the title block where there is room, else in two columns under the heading.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.geometry import Box, Point
from asfitted.layout.document.flow import THIN, balanced
from asfitted.layout.frame import usable_box
from asfitted.layout.lettering import (
    BODY,
    VIEW,
    line_pitch_mm,
    lines_of_text,
    text_item,
    view_heading,
    wrap,
)
from asfitted.layout.parted_rows import with_parted_rows
from asfitted.layout.sheet_layout import Item
from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.layout.table import FittedTable, fit_table, paginate, table_items
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Paper
    from asfitted.layout.table import Table

Notes = tuple[tuple[str, str], ...]
TITLE_MM = 8.0
GAP = 2.0
LEAST_NOTE_MM = 60.0
NOTE_GAP_MM = 0.6


@dataclass(frozen=True)
class TablePage:
    """One page of a table with the notes that stand on it."""

    ident: str
    fitted: FittedTable
    rows: range
    heading: str
    notes: Notes


def _note_box(paper: Paper, notes: Notes) -> tuple[Box, bool]:
    """Return the room for notes, and whether it lies beside the title block."""
    area, block = usable_box(paper), title_block_box(paper)
    beside = Box(area.x0, block.y0, block.x0 - 3.0, block.y1 - 1.0)
    wide = beside.width >= LEAST_NOTE_MM
    if wide and _notes_height_mm(notes, beside.width) <= beside.height:
        return beside, True
    return Box(area.x0, area.y0 + TITLE_MM, area.x0 + area.width / 2 - 3.0, block.y0), False


def _note_lines(notes: Notes, width_mm: float) -> list[list[str]]:
    return [wrap(f"{label}: {words}" if label else words, width_mm, BODY) for label, words in notes]


def _notes_height_mm(notes: Notes, width_mm: float) -> float:
    lines = _note_lines(notes, width_mm)
    return sum(len(part) * line_pitch_mm(BODY) + NOTE_GAP_MM for part in lines)


def table_room(paper: Paper, notes: Notes) -> Box:
    """Return the box for the table: under heading and notes, above the title block."""
    area = usable_box(paper)
    box, beside = _note_box(paper, notes)
    above = 0.0 if beside or not notes else _two_columns(notes, box.width)[1] + 1.0
    return Box(area.x0, area.y0 + TITLE_MM + above, area.x1, title_block_box(paper).y0 - GAP)


def plan_table(
    *,
    key: str,
    title: str,
    table: Table,
    section: str,
    heading: str,
    side_notes: Notes = (),
    papers: tuple[Paper, ...] = ("A4",),
) -> list[SheetPlan]:
    """Return as many plans as the rows need, on the first paper that needs the fewest pages.

    Raises:
        DoesNotFitError: the table is too wide, or a row too high, for every paper.
    """
    paper, fitted, pages = _best(table, side_notes, papers)
    many = len(pages) > 1
    plans = []
    for i, rows in enumerate(pages, start=1):
        part = f", part {i} of {len(pages)}" if many else ""
        page = TablePage(key, fitted, rows, heading + part, side_notes)
        name = f"{key}-{i}" if many else key
        plans.append(SheetPlan(name, title + part, paper, section, page))
    return plans


def _best(
    table: Table, notes: Notes, papers: tuple[Paper, ...]
) -> tuple[Paper, FittedTable, tuple[range, ...]]:
    """Return the paper with the fewest pages; long words are parted only where no paper does."""
    found = [option for paper in papers if (option := _on_paper(table, notes, paper)) is not None]
    if not found:
        room = table_room(papers[-1], notes)
        fitted = with_parted_rows(fit_table(table, room.width, part_words=True), room.height)
        return papers[-1], fitted, _shared_rows(fitted, room.height)
    return min(found, key=lambda option: len(option[2]))


def _on_paper(
    table: Table, notes: Notes, paper: Paper
) -> tuple[Paper, FittedTable, tuple[range, ...]] | None:
    room = table_room(paper, notes)
    try:
        fitted = fit_table(table, room.width)
        return paper, fitted, _shared_rows(fitted, room.height)
    except DoesNotFitError:
        return None


def _shared_rows(fitted: FittedTable, height_mm: float) -> tuple[range, ...]:
    """Return the rows of each page, none of several left nearly empty at the end.

    Raises:
        DoesNotFitError: one row alone is higher than a page.
    """

    def is_last_thin(pages: tuple[range, ...]) -> bool:
        return len(pages) > 1 and _height_mm(fitted, pages[-1]) < THIN * height_mm

    return balanced(lambda room_mm: paginate(fitted, room_mm, room_mm), is_last_thin, height_mm)


def _height_mm(fitted: FittedTable, rows: range) -> float:
    return fitted.header_mm + sum(fitted.row_mm[i] for i in rows)


def build_table(plan: SheetPlan) -> Content:
    """Lay out one page of a table."""
    page: TablePage = plan.payload
    area, room = usable_box(plan.paper), table_room(plan.paper, page.notes)
    at = Point(area.x0, area.y0 + VIEW)
    words = view_heading(page.heading, area.width)
    heading = text_item(f"{page.ident}:heading", words, at, VIEW, bold=True)
    items, _ = table_items(page.ident, page.fitted, page.rows, Point(room.x0, room.y0))
    return Content((heading, *items, *_notes(page, plan.paper)), scale="Not to scale")


def _two_columns(notes: Notes, width_mm: float) -> tuple[int, float]:
    """Return how many notes stand in the first of two columns, and the height they take."""
    heights = [_notes_height_mm((note,), width_mm) for note in notes]
    splits = [
        (max(sum(heights[:i]), sum(heights[i:])), i) for i in range(len(notes) // 2, len(notes) + 1)
    ]
    height, count = min(splits)
    return count, height


def _notes(page: TablePage, paper: Paper) -> list[Item]:
    """Return the notes, from the top of their room."""
    box, beside = _note_box(paper, page.notes)
    if beside:
        return _column(page, page.notes, Point(box.x0, box.y0 + BODY + 1.0), box.width)
    count, _ = _two_columns(page.notes, box.width)
    at = Point(box.x0, box.y0 + BODY)
    right = at.moved(dx=box.width + 6.0)
    return _column(page, page.notes[:count], at, box.width) + _column(
        page, page.notes[count:], right, box.width
    )


def _column(page: TablePage, notes: Notes, at: Point, width_mm: float) -> list[Item]:
    """Return some notes one under the other, the first baseline at ``at``."""
    items = []
    for (label, _), lines in zip(notes, _note_lines(notes, width_mm), strict=True):
        items.append(Item(f"{page.ident}:note:{label}", "text", lines_of_text(lines, at)))
        at = at.moved(dy=len(lines) * line_pitch_mm(BODY) + NOTE_GAP_MM)
    return items
