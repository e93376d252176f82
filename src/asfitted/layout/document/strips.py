"""Blocks cut into strips: the least pieces that a page may be broken between.

A strip is one line of text, one row of a table, or a whole box. Each knows its height, the space
above it, and whether it must stay with the strip that follows.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.document.blocks import (
    Boxed,
    Bullets,
    Facts,
    Heading,
    PageBreak,
    Paragraph,
    Ruled,
)
from asfitted.layout.document.references import count_in, marked
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, wrap
from asfitted.layout.linework import rectangle
from asfitted.layout.sheet_layout import Path, Text
from asfitted.layout.table import FittedTable, Table, fit_table

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.document.blocks import Block

BEFORE = {"part": 5.5, "head": 3.6, "block": 2.4, "entry": 0.8, "table": 2.0}
INDENT, BOX_PAD = 5.0, 3.0
TABLE_AFTER = 1.6
CLOSE_SHARE, CLOSE_ROW_MM = 0.6, 0.6  # of the space above a block; less height of a row


@dataclass(frozen=True)
class TableRow:
    """Which row of which fitted table a strip is."""

    ident: str
    fitted: FittedTable
    row: int
    keys: tuple[str, ...]  # references in its cells, in order of the cells
    link: str  # key that the whole row leads to, or ""


@dataclass(frozen=True)
class Strip:
    """One piece that is never split; its ink counts from its own top left corner, mm."""

    ident: str  # strips of one ident on one page become one item
    height_mm: float
    before_mm: float = 0.0  # dropped at the top of a page
    with_next: bool = False
    texts: tuple[Text, ...] = ()
    paths: tuple[Path, ...] = ()
    keys: tuple[str, ...] = ()
    table: TableRow | None = None
    new_page: bool = False


def strips_of(
    blocks: Sequence[Block], width_mm: float, *, part_words: bool = False, close: bool = False
) -> list[Strip]:
    """Return the strips of some blocks, top to bottom, for a column of a width in mm.

    With ``part_words`` long words of tables are parted where they must be. With ``close`` there is
    less space between blocks and in rows; the lettering stays as it is.

    Raises:
        DoesNotFitError: the words of a table are wider than the page.
    """
    strips: list[Strip] = []
    for place, block in enumerate(blocks):
        ident = f"text:{place:03d}"
        if isinstance(block, PageBreak):
            strips.append(Strip(ident, 0.0, new_page=True))
        elif isinstance(block, Heading):
            strips += _heading(block, ident, width_mm)
        elif isinstance(block, Paragraph):
            strips += _paragraph(block, ident, width_mm)
        elif isinstance(block, Bullets):
            strips += _bullets(block, ident, width_mm)
        elif isinstance(block, Facts):
            strips += _facts(block, ident, width_mm)
        elif isinstance(block, Boxed):
            strips.append(_boxed(block, ident, width_mm))
        else:
            strips += _table(block, width_mm, part_words=part_words, close=close)
    if close:
        return [replace(strip, before_mm=strip.before_mm * CLOSE_SHARE) for strip in strips]
    return strips


def kept_together(strips: list[Strip]) -> list[Strip]:
    """Return the strips of one passage with no line of it left alone on a page."""
    last = len(strips) - 1
    return [
        replace(s, with_next=True) if i < last and i in {0, last - 1} else s
        for i, s in enumerate(strips)
    ]


def _lines(
    text: str,
    ident: str,
    width_mm: float,
    *,
    x_mm: float = 0.0,
    cap_mm: float = BODY,
    bold: bool = False,
    before_mm: float = 0.0,
) -> list[Strip]:
    """Return a strip for each line of a passage, each with its own references."""
    words = marked(text)
    left = list(words.keys)
    strips = []
    for i, line in enumerate(wrap(words.text, width_mm - x_mm, cap_mm, bold=bold)):
        texts = (Text(Point(x_mm, cap_mm), line, cap_mm, bold=bold),) if line else ()
        count = count_in(texts)
        keys, left = tuple(left[:count]), left[count:]
        above = before_mm if i == 0 else 0.0
        strips.append(Strip(ident, line_pitch_mm(cap_mm), above, texts=texts, keys=keys))
    return strips


def _heading(block: Heading, ident: str, width_mm: float) -> list[Strip]:
    part = block.level == 1
    lines = _lines(
        block.text,
        ident,
        width_mm,
        cap_mm=TAG if part else BODY,
        bold=True,
        before_mm=BEFORE["part" if part else "head"],
    )
    return [replace(line, with_next=True) for line in lines]


def _paragraph(block: Paragraph, ident: str, width_mm: float) -> list[Strip]:
    cap_mm = TAG if block.large else BODY
    lines = _lines(
        block.text, ident, width_mm, cap_mm=cap_mm, bold=block.bold, before_mm=BEFORE["block"]
    )
    if block.leads:
        return [replace(line, with_next=True) for line in lines]
    return kept_together(lines)


def _bullets(block: Bullets, ident: str, width_mm: float) -> list[Strip]:
    strips: list[Strip] = []
    for i, entry in enumerate(block.entries):
        above = BEFORE["entry" if i else "block"]
        own = f"{ident}:{i:03d}"
        lines = _lines(entry, own, width_mm, x_mm=INDENT, before_mm=above)
        mark = Text(Point(0.8, BODY), block.mark, BODY)
        lines[0] = replace(lines[0], texts=(mark, *lines[0].texts))
        strips += kept_together(lines)
    return strips


def _facts(block: Facts, ident: str, width_mm: float) -> list[Strip]:
    strips: list[Strip] = []
    for i, (label, words) in enumerate(block.rows):
        above = BEFORE["entry" if i else "block"]
        own = f"{ident}:{i:03d}"
        names = wrap(label, block.label_mm - 2.0, BODY, bold=True)
        lines = _lines(words, own, width_mm, x_mm=block.label_mm, before_mm=above)
        while len(lines) < len(names):
            lines.append(Strip(own, line_pitch_mm(BODY)))
        for row, name in enumerate(names):
            head = Text(Point(0.0, BODY), name, BODY, bold=True)
            lines[row] = replace(lines[row], texts=(head, *lines[row].texts))
        strips += kept_together(lines)
    return strips


def _boxed(block: Boxed, ident: str, width_mm: float) -> Strip:
    inner = width_mm - 2 * BOX_PAD
    lines = _lines(block.heading, ident, inner, cap_mm=TAG, bold=True)
    for entry in block.lines:
        lines += _lines(entry, ident, inner, before_mm=BEFORE["entry"])
    y, texts, keys = BOX_PAD, list[Text](), list[str]()
    for line in lines:
        y += line.before_mm
        texts += [replace(t, at=t.at.moved(BOX_PAD, y)) for t in line.texts]
        keys += line.keys
        y += line.height_mm
    y += BOX_PAD - 1.2
    edge = rectangle(Box(0.0, 0.0, width_mm, y), width_mm=0.7)
    return Strip(
        ident, y + 1.0, BEFORE["block"] + 0.6, texts=tuple(texts), paths=(edge,), keys=tuple(keys)
    )


def _table(block: Ruled, width_mm: float, *, part_words: bool, close: bool) -> list[Strip]:
    rows, keys = [], []
    for row in block.table.rows:
        cells = [marked(cell) for cell in row]
        rows.append(tuple(cell.text for cell in cells))
        keys.append(tuple(key for cell in cells for key in cell.keys))
    table = replace(block.table, rows=tuple(rows))
    fitted = fit_table(table, width_mm, part_words=part_words)
    if close:
        fitted = replace(fitted, row_mm=tuple(mm - CLOSE_ROW_MM for mm in fitted.row_mm))
    fitted = _with_room(fitted, block.least_row_mm)
    strips = [
        Strip(
            f"{block.ident}:{ident}",
            fitted.row_mm[i],
            0.0 if i else BEFORE["table"],
            table=TableRow(block.ident, fitted, i, keys[i], block.links.get(ident, "")),
        )
        for i, ident in enumerate(table.row_idents)
    ]
    return kept_together(strips)


def _with_room(fitted: FittedTable, least_mm: float) -> FittedTable:
    """Return the table with no row lower than so many mm."""
    return replace(fitted, row_mm=tuple(max(mm, least_mm) for mm in fitted.row_mm))


def plain_table(columns: Table, rows: Sequence[tuple[str, ...]]) -> Table:
    """Return a table of the same columns with other rows, named by their place."""
    idents = tuple(f"{i:03d}" for i in range(len(rows)))
    return replace(columns, rows=tuple(rows), row_idents=idents)
