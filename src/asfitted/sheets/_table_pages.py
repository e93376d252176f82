"""Turns a table into planned sheets: A4 landscape, title, table, title block."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.frame import usable_box
from asfitted.layout.lettering import BODY, VIEW, line_pitch_mm, lines_of_text, text_item, wrap
from asfitted.layout.sheet_layout import Item
from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.layout.table import FittedTable, fit_table, paginate, table_items
from asfitted.layout.title_block import HEIGHT, title_block_box

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Paper
    from asfitted.layout.table import Table

TITLE_MM = 8.0
GAP = 2.0


@dataclass(frozen=True)
class TablePage:
    """One page of a table with what stands beside the title block."""

    ident: str
    fitted: FittedTable
    rows: range
    heading: str
    side_notes: tuple[tuple[str, str], ...]


def table_room(paper: Paper) -> Box:
    """Return the box for the table: under the title, above the title block."""
    area = usable_box(paper)
    return Box(area.x0, area.y0 + TITLE_MM, area.x1, title_block_box(paper).y0 - GAP)


def plan_table(
    *,
    key: str,
    title: str,
    table: Table,
    section: str,
    heading: str,
    side_notes: tuple[tuple[str, str], ...] = (),
    paper: Paper = "A4",
) -> list[SheetPlan]:
    """Return as many plans as the rows need."""
    room = table_room(paper)
    fitted = fit_table(table, room.width)
    pages = paginate(fitted, room.height, room.height)
    many = len(pages) > 1
    plans = []
    for i, rows in enumerate(pages, start=1):
        part = f", part {i} of {len(pages)}" if many else ""
        page = TablePage(key, fitted, rows, heading + part, side_notes)
        plans.append(SheetPlan(f"{key}-{i}" if many else key, title + part, paper, section, page))
    return plans


def build_table(plan: SheetPlan) -> Content:
    """Lay out one page of a table."""
    page: TablePage = plan.payload
    room = table_room(plan.paper)
    heading = text_item(
        f"{page.ident}:heading", page.heading, Point(room.x0, room.y0 - 3.0), VIEW, bold=True
    )
    items, _ = table_items(page.ident, page.fitted, page.rows, Point(room.x0, room.y0))
    return Content((heading, *items, *_side_notes(page, plan.paper)), scale="No scale")


def _side_notes(page: TablePage, paper: Paper) -> tuple[Item, ...]:
    """Return the notes in the room left of the title block."""
    area, block = usable_box(paper), title_block_box(paper)
    width = block.x0 - area.x0 - 3.0
    if width < 30 or not page.side_notes:
        return ()
    y, items = block.y0 + BODY + 0.5, []
    for label, words in page.side_notes:
        lines = wrap(f"{label}: {words}" if label else words, width, BODY)
        name = f"{page.ident}:note:{label}"
        items.append(Item(name, "text", lines_of_text(lines, Point(area.x0, y))))
        y += len(lines) * line_pitch_mm(BODY) + 0.6
    limit = block.y0 + HEIGHT
    if y - line_pitch_mm(BODY) > limit + 0.5:
        return tuple(items[: _that_fit(page, width, limit, block.y0 + BODY + 0.5)])
    return tuple(items)


def _that_fit(page: TablePage, width: float, limit: float, y: float) -> int:
    """Return how many notes end above the frame."""
    count = 0
    for label, words in page.side_notes:
        y += len(wrap(f"{label}: {words}", width, BODY)) * line_pitch_mm(BODY) + 0.6
        if y - line_pitch_mm(BODY) > limit + 0.5:
            break
        count += 1
    return count
