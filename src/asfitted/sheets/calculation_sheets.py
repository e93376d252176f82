"""Calculation sheets: symbols, formulae and sources, then the working of each surveyed circuit."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.explain.explanation import CAUTIONS
from asfitted.explain.sheet_rows import NONE, circuit_blocks
from asfitted.layout.document.flow import BALANCE_MM, THIN
from asfitted.layout.document.references import PLACEHOLDER
from asfitted.layout.sheet_model import SheetPlan
from asfitted.layout.table import Column, Table, fit_table
from asfitted.sheets._calculation_keys import KEY as KEYS_KEY
from asfitted.sheets._calculation_keys import plan_keys
from asfitted.sheets._document_pages import DocumentPage, build_document
from asfitted.sheets._table_pages import TablePage, build_table, table_room

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.explain.sheet_rows import Block, Row
    from asfitted.layout.sheet_layout import Paper
    from asfitted.layout.sheet_model import Content, Model, Numbers
    from asfitted.layout.table import FittedTable

ORDER = 80
READERS = ("inspector",)
KEY = "calculations"
PAPER: Paper = "A4 portrait"
SECTION = "Calculations"
LEAST_BEGUN = 4  # rows of a circuit at the foot of a page
COLUMNS = (
    Column("Symbol", wraps=False),
    Column("What it is", least_mm=51.0),
    Column("Numbers", least_mm=64.0),
    Column("Value", align="end", wraps=False),
    Column("See", align="end", wraps=False),
)
#: What stands where the numbers of the key sheets come in: "sheets 58 to 59".
KEY_SHEETS = f"sheets {PLACEHOLDER} to {PLACEHOLDER}"
NOTES = (
    ("See", f"number of the source; sources, symbols and an index of circuits: {KEY_SHEETS}"),
    ("Same", "rows equal to one before in the circuit are not repeated"),
    ("", CAUTIONS[1]),
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the sheets; none where no circuit is surveyed."""
    blocks, sources = circuit_blocks(model.installation, model.results)
    if not blocks:
        return []
    room = table_room(PAPER, NOTES)
    fitted = fit_table(_table(blocks), room.width, part_words=True)
    pages = _balanced(fitted, blocks, room.height - fitted.header_mm)
    plans, stands_on = [], dict[str, list[str]]()
    for number, rows in enumerate(pages, start=1):
        part = f", part {number} of {len(pages)}" if len(pages) > 1 else ""
        held = range(len(rows))
        page = TablePage(KEY, _of_page(fitted, rows), held, f"Calculations{part}", NOTES)
        name = f"{KEY}-{number}" if part else KEY
        plans.append(SheetPlan(name, f"Calculations{part}", PAPER, SECTION, page))
        for tag in dict.fromkeys(fitted.table.row_idents[i].rpartition(":")[0] for i in rows):
            stands_on.setdefault(tag, []).append(name)
    where = {tag: tuple(names) for tag, names in stands_on.items()}
    keys = plan_keys(blocks, where, sources, KEY)
    return [*keys, *plans]


def _table(blocks: Sequence[Block]) -> Table:
    """Return every row of every circuit, each circuit's heading for a turned page after it."""
    rows: list[Row] = []
    idents: list[str] = []
    heads = set[int]()
    for block in blocks:
        heads |= {len(rows), len(rows) + len(block.rows)}
        rows += [*block.rows, block.continued]
        idents += [f"{block.tag}:{place}" for place in range(len(block.rows))]
        idents.append(f"{block.tag}:continued")
    return Table(COLUMNS, tuple(rows), tuple(idents), tinted_rows=frozenset(heads))


def _foot(page: Sequence[int], leads: frozenset[int], left: int) -> int:
    """Return how many rows stay on a page that is turned.

    A cable's name goes with its figures, and no circuit leaves fewer than four rows to the next.
    """
    stay = len(page) - max(0, LEAST_BEGUN - left)
    return stay - 1 if page[stay - 1] in leads else stay


def _pages(fitted: FittedTable, blocks: Sequence[Block], room_mm: float) -> list[tuple[int, ...]]:
    """Split the rows over pages.

    A circuit that begins on a page has four rows there at least; one that goes on begins the next
    page with its heading.
    """
    row_mm = fitted.row_mm
    leads = frozenset(i for i, row in enumerate(fitted.table.rows) if row[-1] == NONE)
    pages: list[tuple[int, ...]] = []
    page: list[int] = []
    at = 0
    for block in blocks:
        begun = len(page)
        again = at + len(block.rows)
        for row in range(at, again):
            if sum(row_mm[i] for i in page) + row_mm[row] > room_mm:
                stay = begun if row - at < LEAST_BEGUN else _foot(page, leads, again - row)
                turned = page[stay:] if stay == begun else [again, *page[stay:]]
                pages.append(tuple(page[:stay]))
                page, begun = turned, 0
            page.append(row)
        at = again + 1
    return [*pages, tuple(page)]


def _balanced(
    fitted: FittedTable, blocks: Sequence[Block], room_mm: float
) -> list[tuple[int, ...]]:
    """Return the rows of each page, the pages lowered until the last is not nearly empty."""
    found = _pages(fitted, blocks, room_mm)
    lower = room_mm
    while len(found) > 1 and sum(fitted.row_mm[i] for i in found[-1]) < THIN * room_mm:
        lower -= BALANCE_MM
        tried = _pages(fitted, blocks, lower)
        if len(tried) > len(found):
            return found
        found = tried
    return found


def _of_page(fitted: FittedTable, rows: Sequence[int]) -> FittedTable:
    """Return the rows of one page as a table of their own, with the widths of the whole."""
    whole = fitted.table
    table = Table(
        whole.columns,
        tuple(whole.rows[i] for i in rows),
        tuple(whole.row_idents[i] for i in rows),
        tinted_rows=frozenset(place for place, i in enumerate(rows) if i in whole.tinted_rows),
    )
    return replace(
        fitted,
        table=table,
        cell_lines=tuple(fitted.cell_lines[i] for i in rows),
        row_mm=tuple(fitted.row_mm[i] for i in rows),
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - planned whole
    """Lay out one page, with the numbers of the key sheets on those of the working."""
    if isinstance(plan.payload, DocumentPage):
        return build_document(plan, numbers)
    page: TablePage = plan.payload
    found = _key_sheets(numbers)
    notes = tuple((label, words.replace(KEY_SHEETS, found)) for label, words in page.notes)
    return build_table(replace(plan, payload=replace(page, notes=notes)))


def _key_sheets(numbers: Numbers) -> str:
    """Return ``sheet 58`` or ``sheets 58 to 59``."""
    parts = [numbers.of(key) for key in numbers.by_key if key.startswith(KEYS_KEY)]
    return f"sheet {parts[0]}" if len(parts) == 1 else f"sheets {parts[0]} to {parts[-1]}"
