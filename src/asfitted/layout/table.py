"""Ruled tables: columns fitted to their content, headers repeated, rows never split over pages."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from asfitted.errors import DoesNotFitError
from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.breakable_words import with_breakable_words
from asfitted.layout.lettering import (
    BODY,
    line_pitch_mm,
    lines_of_text,
    unbroken_words,
    wrap,
)
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.sheet_layout import Item, Path, Text

if TYPE_CHECKING:
    from collections.abc import Sequence

PAD_X, PAD_Y = 1.2, 1.3
_LETTERS = (16, 12, 9)  # of the longest word, tried in turn


@dataclass(frozen=True)
class Column:
    """One column: header words, how its cells stand, and whether it may wrap."""

    header: str
    align: Literal["start", "middle", "end"] = "start"
    wraps: bool = True
    least_mm: float = 6.0


@dataclass(frozen=True)
class Table:
    """Headers and rows of plain text. ``row_idents`` name the rows (tags), for links."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    row_idents: tuple[str, ...]
    strong_rows: frozenset[int] = frozenset()  # rows in bold (new work, totals)
    tinted_rows: frozenset[int] = frozenset()  # rows on a tint (spare and blank ways)


@dataclass(frozen=True)
class FittedTable:
    """A table with column widths in mm and every cell broken into lines."""

    table: Table
    widths_mm: tuple[float, ...]
    header_lines: tuple[tuple[str, ...], ...]
    header_mm: float
    cell_lines: tuple[tuple[tuple[str, ...], ...], ...]
    row_mm: tuple[float, ...]


def fit_table(table: Table, width_mm: float, *, part_words: bool = False) -> FittedTable:
    """Choose column widths that need the least height within a total width.

    Each column starts as narrow as its longest word; what is left goes, bit by bit, to the column
    whose longest text is furthest from fitting on one line. With ``part_words`` long words are
    parted where the page is too narrow for them.

    Raises:
        DoesNotFitError: the words alone are wider than the page.
    """
    table, least = _narrow_enough(table, width_mm, _LETTERS if part_words else ())
    wish = [_full_width(table, i) for i in range(len(table.columns))]
    spare = width_mm - sum(least)
    widths = list(least)
    step = 0.5
    while spare >= step:
        lacking = [(w - have) / max(have, 1.0) for w, have in zip(wish, widths, strict=True)]
        worst = max(range(len(widths)), key=lambda i: (lacking[i], -i))
        if lacking[worst] <= 0:
            break
        widths[worst] += step
        spare -= step
    if spare > 0:
        share = spare / sum(widths)
        widths = [w * (1 + share) for w in widths]
    return _break_cells(table, tuple(widths))


def _narrow_enough(
    table: Table, width_mm: float, letters: tuple[int, ...]
) -> tuple[Table, list[float]]:
    """Return the table, its longest words parted if it must be, and its least column widths."""
    tried = table
    for most in (None, *letters):
        tried = table if most is None else with_breakable_words(table, most)
        least = [_least_width(tried, i) for i in range(len(table.columns))]
        if sum(least) <= width_mm + 1e-6:
            return tried, least
    raise DoesNotFitError(
        f"a table needs {sum(least):.0f} mm for its longest words, the page has {width_mm:.0f}"
    )


def _least_width(table: Table, column: int) -> float:
    head = table.columns[column]
    words = [w for w in head.header.split() if w]
    cells = [row[column] for row in table.rows]
    if head.wraps:
        body = [w for cell in cells for w in unbroken_words(cell)]
    else:
        body = [line for cell in cells for line in cell.split("\n")]
    bold = max((text_width_mm(w, BODY, bold=True) for w in words), default=0.0)
    strong = bool(table.strong_rows)
    plain = max((text_width_mm(w, BODY, bold=strong) for w in body), default=0.0)
    return max(bold, plain, head.least_mm - 2 * PAD_X) + 2 * PAD_X + 0.05


def _full_width(table: Table, column: int) -> float:
    texts = [line for row in table.rows for line in row[column].split("\n")]
    strong = bool(table.strong_rows)
    longest = max((text_width_mm(t, BODY, bold=strong) for t in texts), default=0.0)
    return longest + 2 * PAD_X + 0.05


def _break_cells(table: Table, widths: tuple[float, ...]) -> FittedTable:
    heads = tuple(
        tuple(wrap(c.header, w - 2 * PAD_X, BODY, bold=True))
        for c, w in zip(table.columns, widths, strict=True)
    )
    cells = tuple(
        tuple(
            tuple(wrap(cell, w - 2 * PAD_X, BODY, bold=bool(table.strong_rows)))
            for cell, w in zip(row, widths, strict=True)
        )
        for row in table.rows
    )
    return FittedTable(
        table,
        widths,
        heads,
        row_height_mm(heads),
        cells,
        tuple(row_height_mm(row) for row in cells),
    )


def row_height_mm(cells: Sequence[tuple[str, ...]]) -> float:
    """Return the height in mm of a row of cells broken into lines."""
    most = max((len(c) for c in cells), default=1)
    return BODY + (most - 1) * line_pitch_mm(BODY) + 2 * PAD_Y + 0.4


def paginate(fitted: FittedTable, first_mm: float, next_mm: float) -> tuple[range, ...]:
    """Split the rows over pages of the given heights; the header is repeated, no row is split.

    Raises:
        DoesNotFitError: one row alone is higher than a page.
    """
    pages: list[range] = []
    start, left = 0, first_mm - fitted.header_mm
    for i, height in enumerate(fitted.row_mm):
        if height > left + 1e-6 and i > start:
            pages.append(range(start, i))
            start, left = i, next_mm - fitted.header_mm
        if height > left + 1e-6:
            raise DoesNotFitError(f"table row {i + 1} is {height:.0f} mm high: no page holds it")
        left -= height
    pages.append(range(start, len(fitted.row_mm)))
    return tuple(pages)


def table_items(
    ident: str, fitted: FittedTable, rows: range, at: Point, rule_mm: float = 0.18
) -> tuple[tuple[Item, ...], Box]:
    """Return the items of a page of a table from its top left corner, and the box it fills."""
    width = sum(fitted.widths_mm)
    bottom = at.y + fitted.header_mm + sum(fitted.row_mm[i] for i in rows)
    box = Box(at.x, at.y, at.x + width, bottom)
    xs = [at.x]
    for w in fitted.widths_mm:
        xs.append(xs[-1] + w)
    ys = [at.y, at.y + fitted.header_mm]
    items: list[Item] = []
    tints: list[Path] = [
        rectangle(Box(at.x, at.y, box.x1, ys[1]), width_mm=None, fill="tint"),
    ]
    y = ys[1]
    for i in rows:
        if i in fitted.table.tinted_rows:
            tints.append(
                rectangle(Box(at.x, y, box.x1, y + fitted.row_mm[i]), width_mm=None, fill="tint")
            )
        y += fitted.row_mm[i]
        ys.append(y)
    rules = [polyline((at.x, y), (box.x1, y), width_mm=rule_mm) for y in ys[2:-1]]
    rules += [polyline((x, at.y), (x, bottom), width_mm=rule_mm) for x in xs[1:-1]]
    rules += [polyline((at.x, ys[1]), (box.x1, ys[1]), width_mm=2 * rule_mm)]
    rules.append(rectangle(box, width_mm=2 * rule_mm))
    items.append(Item(f"{ident}:rules", "outline", (*tints, *rules)))
    items.append(_cells(f"{ident}:head", fitted, fitted.header_lines, xs, ys[0], strong=True))
    for place, i in enumerate(rows):
        name = f"{ident}:{fitted.table.row_idents[i]}"
        strong = i in fitted.table.strong_rows
        items.append(_cells(name, fitted, fitted.cell_lines[i], xs, ys[place + 1], strong=strong))
    return tuple(items), box


def _cells(
    ident: str,
    fitted: FittedTable,
    cells: Sequence[tuple[str, ...]],
    xs: list[float],
    top: float,
    *,
    strong: bool,
) -> Item:
    texts: list[Text] = []
    for i, (column, lines) in enumerate(zip(fitted.table.columns, cells, strict=True)):
        left = {
            "start": xs[i] + PAD_X,
            "middle": (xs[i] + xs[i + 1]) / 2,
            "end": xs[i + 1] - PAD_X,
        }[column.align]
        first = Point(left, top + PAD_Y + BODY)
        texts.extend(lines_of_text(list(lines), first, BODY, anchor=column.align, bold=strong))
    return Item(ident, "text", tuple(texts))
