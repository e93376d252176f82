"""Blocks set one under the other on A4 pages; no block is parted."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.document.references import filled, link_to
from asfitted.layout.frame import usable_box
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, lines_of_text, wrap
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.parted_rows import with_parted_rows
from asfitted.layout.sheet_layout import Item, Text
from asfitted.layout.table import fit_table, table_items
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from asfitted.layout.sheet_layout import Paper
    from asfitted.layout.sheet_model import Numbers
    from asfitted.layout.table import FittedTable, Table

PAPER: Paper = "A4 portrait"
GAP_MM = 3.5
CLOSER_MM = 0.6
AREA = Box(
    usable_box(PAPER).x0,
    usable_box(PAPER).y0,
    usable_box(PAPER).x1,
    title_block_box(PAPER).y0 - 3.0,
)


@dataclass(frozen=True)
class Block:
    """Something of a known height that is drawn from its top left corner.

    ``joined`` keeps it on the page of the block after it. ``gap_mm`` is what is left free under
    it. ``part`` names the part of the brief that it belongs to, ``key`` what it tells of, so that
    other sheets can name its page.
    """

    height_mm: float
    draw: Callable[[Point, Numbers], tuple[Item, ...]]
    joined: bool = False
    gap_mm: float = GAP_MM
    part: str = ""
    key: str = ""


@dataclass(frozen=True)
class Rows:
    """A table that goes on over as many pages as it needs, its header repeated.

    ``sheets`` are the keys of the sheets that a row names, by its ident: their numbers are filled
    in where the row has placeholders, and the row leads to the first. A ``whole`` table is not
    parted unless no page holds it with what it is joined to.
    """

    ident: str
    fitted: FittedTable
    joined: bool = False
    part: str = ""
    sheets: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    whole: bool = False

    def block(self, rows: range) -> Block:
        """Return some of the rows as one block."""
        name = self.ident if rows.start == 0 else f"{self.ident}:{rows.start}"

        def draw(at: Point, numbers: Numbers) -> tuple[Item, ...]:
            items = table_items(name, self.fitted, rows, at)[0]
            by_ident = {f"{name}:{ident}": keys for ident, keys in self.sheets.items() if keys}
            return tuple(_led(item, by_ident.get(item.ident, ()), numbers) for item in items)

        return Block(self.height_mm(rows), draw, part=self.part)

    def height_mm(self, rows: range) -> float:
        """Return the height of some of the rows with the header."""
        return self.fitted.header_mm + sum(self.fitted.row_mm[i] for i in rows)

    def fitting(self, start: int, room_mm: float) -> range:
        """Return the rows from one on that fit a height; none where not even one does."""
        end = start
        while end < len(self.fitted.row_mm) and self.height_mm(range(start, end + 1)) <= room_mm:
            end += 1
        return range(start, end)


def _led(item: Item, keys: tuple[str, ...], numbers: Numbers) -> Item:
    """Return the item of a row with the numbers of the sheets that it names, led to the first."""
    if not keys:
        return item
    texts = [part for part in item.parts if isinstance(part, Text)]
    return replace(item, parts=filled(texts, keys, numbers), link=link_to(keys[0], numbers))


class _Pages:
    """Pages that are being filled."""

    def __init__(self, room_mm: float) -> None:
        self.room_mm = room_mm
        self.pages: list[list[Block]] = []
        self.left_mm = 0.0

    def turn(self) -> None:
        self.pages.append([])
        self.left_mm = self.room_mm

    def has_room(self, height_mm: float) -> bool:
        return bool(self.pages) and height_mm <= self.left_mm + 1e-6

    def put(self, block: Block) -> None:
        self.pages[-1].append(block)
        self.left_mm -= block.height_mm + block.gap_mm

    def put_rows(self, rows: Rows) -> None:
        rows = replace(rows, fitted=with_parted_rows(rows.fitted, self.room_mm))
        start, count = 0, len(rows.fitted.row_mm)
        while start < count:
            part = rows.fitting(start, self.left_mm)
            if not part and not self.pages[-1]:
                raise DoesNotFitError(f"row {start + 1} of {rows.ident}: no page holds it")
            if part:
                self.put(rows.block(part))
            start = part.stop
            if start < count:
                self.turn()


def pages_of(blocks: Sequence[Block | Rows], room_mm: float) -> tuple[tuple[Block, ...], ...]:
    """Return the blocks page by page, each page as full as it gets.

    Raises:
        DoesNotFitError: one block, with what must stay with it, is higher than a page.
    """
    pages = _Pages(room_mm)
    for group in _groups(blocks):
        height = _group_mm(group, whole=True)
        if height > room_mm:
            height = _group_mm(group, whole=False)
        if height > room_mm + 1e-6:
            raise DoesNotFitError(f"a block of the route brief is {height:.0f} mm high: no page")
        if not pages.has_room(height):
            pages.turn()
        for block in group:
            if isinstance(block, Rows):
                pages.put_rows(block)
            else:
                pages.put(block)
    return tuple(tuple(page) for page in pages.pages)


def _group_mm(group: Sequence[Block | Rows], *, whole: bool) -> float:
    """Return the height of what must stay together, with whole tables or without."""
    gaps = sum(_gap_mm(block) for block in group[:-1])
    return sum(_least_mm(block, whole=whole) for block in group) + gaps


def _least_mm(block: Block | Rows, *, whole: bool) -> float:
    """Return the height that must stay together: of a table its header and two rows, or all."""
    if isinstance(block, Block):
        return block.height_mm
    count = len(block.fitted.row_mm)
    return block.height_mm(range(count if whole and block.whole else min(2, count)))


def _gap_mm(block: Block | Rows) -> float:
    return block.gap_mm if isinstance(block, Block) else GAP_MM


def _groups(blocks: Sequence[Block | Rows]) -> Iterator[list[Block | Rows]]:
    group: list[Block | Rows] = []
    for block in blocks:
        group.append(block)
        if not block.joined:
            yield group
            group = []
    if group:
        yield group


def heading(ident: str, words: str, *, beside: str = "") -> Block:
    """Return a heading that stays with what follows it, with smaller words at its end."""
    lines = wrap(words, AREA.width, TAG, bold=True)
    taken = text_width_mm(lines[-1], TAG, bold=True) + text_width_mm(beside, BODY)
    under = bool(beside) and taken + 4.0 > AREA.width
    last = TAG + (len(lines) - 1) * line_pitch_mm(TAG)
    height = last + 1.5 + under * line_pitch_mm(BODY)

    def draw(at: Point, _: Numbers) -> tuple[Item, ...]:
        first = at.moved(dy=TAG)
        rule = polyline((at.x, at.y + height), (AREA.x1, at.y + height), width_mm=0.35)
        items = [
            Item(ident, "text", lines_of_text(lines, first, TAG, bold=True)),
            Item(f"{ident}:rule", "outline", (rule,)),
        ]
        if beside:
            foot = Point(AREA.x1, at.y + last + under * line_pitch_mm(BODY))
            items.append(Item(f"{ident}:beside", "text", (Text(foot, beside, BODY, anchor="end"),)))
        return tuple(items)

    return Block(height, draw, joined=True)


def paragraph(ident: str, words: str, *, joined: bool = False) -> Block:
    """Return running text over the whole width."""
    lines = wrap(words, AREA.width, BODY)
    height = BODY + (len(lines) - 1) * line_pitch_mm(BODY) + 1.0

    def draw(at: Point, _: Numbers) -> tuple[Item, ...]:
        return (Item(ident, "text", lines_of_text(lines, at.moved(dy=BODY))),)

    return Block(height, draw, joined=joined)


def table_rows(
    ident: str, table: Table, sheets: Mapping[str, tuple[str, ...]] | None = None
) -> Rows:
    """Return a table over the whole width, its rows a little closer than in a schedule.

    Args:
        ident: name of the table on the page.
        table: its rows.
        sheets: keys of the sheets that rows name, by their idents.
    """
    fitted = fit_table(table, AREA.width, part_words=True)
    rows_mm = tuple(height - CLOSER_MM for height in fitted.row_mm)
    return Rows(ident, replace(fitted, row_mm=rows_mm), sheets=sheets or {})


@dataclass(frozen=True)
class Caution:
    """The cautions at the top of each page, where the reader acts."""

    lines: tuple[str, ...]

    @property
    def height_mm(self) -> float:
        """Height with its frame and the gap under it."""
        return self._inner_mm + 2.5

    @property
    def _inner_mm(self) -> float:
        return BODY + (len(self.lines) - 1) * line_pitch_mm(BODY) + 3.8

    def items(self) -> tuple[Item, ...]:
        """Return the framed lines."""
        box = Box(AREA.x0, AREA.y0, AREA.x1, AREA.y0 + self._inner_mm)
        texts: tuple[Text, ...] = lines_of_text(
            list(self.lines), Point(box.x0 + 2.0, box.y0 + BODY + 1.5), bold=True
        )
        return (
            Item("caution:frame", "outline", (rectangle(box, width_mm=0.7),)),
            Item("caution", "text", texts),
        )


def caution_of(words: str) -> Caution:
    """Return cautions broken to the width of the page."""
    return Caution(tuple(wrap(words, AREA.width - 4.0, BODY, bold=True)))
