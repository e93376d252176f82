"""Puts figures, notes, legend and table of a subject on sheets, none on top of another."""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.geometry import Box, Point
from asfitted.layout.details.pairs import LINE_WORDS, PATTERNS, PairsFigure
from asfitted.layout.frame import usable_box
from asfitted.layout.legend import LineSample, lay_out_legend, used_symbols
from asfitted.layout.lettering import BODY, VIEW, line_pitch_mm, lines_of_text, text_item, wrap
from asfitted.layout.linework import rectangle, widths_for
from asfitted.layout.sheet_layout import Item
from asfitted.layout.table import fit_table, table_items
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from asfitted.layout.details.figure import Figure
    from asfitted.layout.details.subject import Notes
    from asfitted.layout.sheet_layout import Paper, SymbolInfo
    from asfitted.layout.table import Table

GAP = 6.0
TITLE_MM = 8.0
LEAST_SIDE_MM = 66.0
LEGEND_COLUMN_MM = 62.0
NOTE_COLUMN_MM = 92.0


@dataclass(frozen=True)
class Page:
    """What stands on one detail sheet. ``table`` None: it has sheets of its own."""

    title: str
    caution: str
    figures: tuple[Figure, ...]
    notes: Notes
    table: Table | None
    paper: Paper


@dataclass(frozen=True)
class _Block:
    """Something that needs a height for a width, and can then be placed."""

    likes: tuple[str, ...]  # spaces, the best first
    height_mm: Callable[[float], float]
    place: Callable[[Box], tuple[Item, ...]]


def pages(page: Page, catalogue: Mapping[str, SymbolInfo]) -> list[Page]:
    """Return the sheets for one page with too much on it: figures in order, the table if it fits.

    Notes and caution stand on each sheet; the table on the last, or on none.
    """
    made: list[tuple[Figure, ...]] = []
    for figure in page.figures:
        wider = (*made[-1], figure) if made else (figure,)
        if made and _fits(page, wider, catalogue, with_table=False):
            made[-1] = wider
        else:
            made.append((figure,))
    found = [Page(page.title, page.caution, group, page.notes, None, page.paper) for group in made]
    if page.table is not None and _fits(page, made[-1], catalogue, with_table=True):
        last = found[-1]
        found[-1] = Page(last.title, last.caution, made[-1], last.notes, page.table, page.paper)
    return found


def _fits(
    page: Page,
    figures: tuple[Figure, ...],
    catalogue: Mapping[str, SymbolInfo],
    *,
    with_table: bool,
) -> bool:
    table = page.table if with_table else None
    trial = Page(page.title, page.caution, figures, page.notes, table, page.paper)
    return fits(trial, catalogue)


def fits(page: Page, catalogue: Mapping[str, SymbolInfo]) -> bool:
    """Tell whether everything on a sheet finds room."""
    return _arranged(page, catalogue) is not None


def compose(page: Page, catalogue: Mapping[str, SymbolInfo]) -> tuple[Item, ...]:
    """Return the items of one sheet.

    Raises:
        DoesNotFitError: one figure with its notes and legend is larger than the sheet.
    """
    items = _arranged(page, catalogue)
    if items is None:
        raise DoesNotFitError(f"{page.title}: a figure does not fit {page.paper}")
    return items


def _arranged(page: Page, catalogue: Mapping[str, SymbolInfo]) -> tuple[Item, ...] | None:
    """Return the items of a sheet, None where they do not fit."""
    area, block = usable_box(page.paper), title_block_box(page.paper)
    head, top = _head(page, area)
    room = Box(area.x0, top, area.x1, block.y0 - 3.0)
    shelves = _shelves(page.figures, room)
    if shelves is None:
        return None
    drawn = tuple(item for figure, at in shelves for item in figure.draw(at, page.paper))
    right = max(at.x + f.width_mm for f, at in shelves)
    bottom = max(at.y + f.height_mm for f, at in shelves)
    blocks = _blocks(page, drawn, catalogue)
    for spaces in _spaces(area, block, room, Point(right, bottom)):
        placed = _placed(blocks, spaces)
        if placed is not None:
            return (*head, *drawn, *placed)
    return None


def _spaces(area: Box, block: Box, room: Box, reach: Point) -> tuple[dict[str, Box], ...]:
    """Return the two ways to divide what figures that reach so far leave free."""
    foot = Box(area.x0, block.y0, block.x0 - 6.0, area.y1)
    side_x = reach.x + GAP + 2.0
    low = Box(room.x0, reach.y + GAP, room.x1, room.y1)
    return (
        {"foot": foot, "side": Box(side_x, room.y0, room.x1, reach.y), "low": low},
        {
            "foot": foot,
            "side": Box(side_x, room.y0, room.x1, room.y1),
            "low": Box(low.x0, low.y0, reach.x, low.y1),
        },
    )


def _head(page: Page, area: Box) -> tuple[tuple[Item, ...], float]:
    """Return title and caution, and where the figures may begin."""
    at = Point(area.x0, area.y0 + VIEW)
    title = text_item("details:title", page.title, at, VIEW, bold=True)
    lines = wrap(f"Caution. {page.caution}", area.width - 6.0, BODY, bold=True)
    top = area.y0 + TITLE_MM
    height = len(lines) * line_pitch_mm(BODY) + 2.4
    box = Box(area.x0, top, area.x1, top + height)
    width = widths_for(page.paper).wide
    edge = Item("details:caution:edge", "outline", (rectangle(box, width_mm=width),))
    words = lines_of_text(lines, Point(box.x0 + 3.0, top + BODY + 1.6), bold=True)
    return (title, edge, Item("details:caution", "text", words)), box.y1 + 5.0


def _shelves(figures: Sequence[Figure], room: Box) -> list[tuple[Figure, Point]] | None:
    """Return each figure with its corner: rows from the top, left to right; None without room."""
    placed: list[tuple[Figure, Point]] = []
    x, y, high = room.x0, room.y0, 0.0
    for figure in figures:
        if x > room.x0 and x + figure.width_mm > room.x1 + 1e-6:
            x, y, high = room.x0, y + high + GAP, 0.0
        if y + figure.height_mm > room.y1 + 1e-6 or x + figure.width_mm > room.x1 + 1e-6:
            return None
        placed.append((figure, Point(x, y)))
        x, high = x + figure.width_mm + GAP, max(high, figure.height_mm)
    return placed


def _blocks(
    page: Page, drawn: tuple[Item, ...], catalogue: Mapping[str, SymbolInfo]
) -> list[_Block]:
    """Return table, notes and legend of a sheet, those it has."""
    blocks = []
    if page.table is not None:
        blocks.append(_table_block(page.table))
    if page.notes:
        blocks.append(_notes_block(page.notes))
    explained = {
        part_name
        for item in drawn
        if item.ident.startswith("legend:")
        for part_name in used_symbols((item,))
    }
    symbols = [name for name in used_symbols(drawn) if name not in explained]
    lines = _line_samples(page)
    if symbols or lines:
        blocks.append(_legend_block(symbols, lines, catalogue, page.paper))
    return blocks


def _line_samples(page: Page) -> list[LineSample]:
    """Return the kinds of line used by the figures of a sheet."""
    width = widths_for(page.paper)
    carried = {kind for f in page.figures if isinstance(f, PairsFigure) for kind in f.carried}
    samples = [
        LineSample(LINE_WORDS[k], width.symbol, PATTERNS[k]) for k in PATTERNS if k in carried
    ]
    if any(
        f.key.startswith(("outlet", "isolator")) and f.key != "outlet-face" for f in page.figures
    ):
        samples.append(LineSample("Mechanical link", width.narrow, "dashed"))
        samples.append(LineSample("Edge of an enclosure", width.narrow, "long_dash_dot"))
    return samples


def _legend_block(
    symbols: list[str],
    lines: list[LineSample],
    catalogue: Mapping[str, SymbolInfo],
    paper: Paper,
) -> _Block:
    def laid_out(box: Box, at: Point) -> tuple[tuple[Item, ...], float]:
        legend = lay_out_legend(
            at=at,
            width_mm=box.width,
            columns=max(1, int(box.width // LEGEND_COLUMN_MM)),
            symbols=symbols,
            catalogue=catalogue,
            lines=lines,
            width_of_symbol_lines_mm=widths_for(paper).symbol,
        )
        return legend.items, legend.height_mm

    return _Block(
        ("foot", "side", "low"),
        lambda width: laid_out(Box(0, 0, width, 0), Point(0, 0))[1],
        lambda box: laid_out(box, Point(box.x0, box.y0))[0],
    )


def _table_block(table: Table) -> _Block:
    def height(width: float) -> float:
        try:
            fitted = fit_table(table, width)
        except DoesNotFitError:
            return float("inf")
        return fitted.header_mm + sum(fitted.row_mm)

    def place(box: Box) -> tuple[Item, ...]:
        fitted = fit_table(table, box.width)
        rows = range(len(table.rows))
        return table_items("details:table", fitted, rows, Point(box.x0, box.y0))[0]

    return _Block(("low", "side", "foot"), height, place)


def _notes_block(notes: Notes) -> _Block:
    def columns(width: float) -> list[list[tuple[str, list[str]]]]:
        count = max(1, int(width // NOTE_COLUMN_MM))
        each = width / count - (4.0 if count > 1 else 0.0)
        wrapped = [(label, wrap(f"{label}: {words}", each, BODY)) for label, words in notes]
        made: list[list[tuple[str, list[str]]]] = [[] for _ in range(count)]
        share = sum(len(lines) for _, lines in wrapped) / count
        taken = 0.0
        for label, lines in wrapped:
            made[min(count - 1, int((taken + len(lines) / 2) / share))].append((label, lines))
            taken += len(lines)
        return made

    def height(width: float) -> float:
        deepest = max(sum(_note_mm(lines) for _, lines in column) for column in columns(width))
        return deepest + 1.0

    def place(box: Box) -> tuple[Item, ...]:
        made = columns(box.width)
        items = []
        for i, column in enumerate(made):
            at = Point(box.x0 + i * box.width / len(made), box.y0 + BODY)
            for label, lines in column:
                items.append(Item(f"details:note:{label}", "text", lines_of_text(lines, at)))
                at = at.moved(dy=_note_mm(lines))
        return tuple(items)

    return _Block(("side", "low", "foot"), height, place)


def _note_mm(lines: list[str]) -> float:
    return len(lines) * line_pitch_mm(BODY) + 1.0


def _placed(blocks: list[_Block], spaces: dict[str, Box]) -> tuple[Item, ...] | None:
    """Return the blocks in the spaces, one below the other in each; None where none holds them.

    Every way to share them out is tried, what the blocks like best first.
    """
    usable = {n: b for n, b in spaces.items() if b.width >= LEAST_SIDE_MM and b.height > BODY * 3}
    wishes = [[name for name in block.likes if name in usable] for block in blocks]
    for choice in itertools.product(*wishes):
        filled = {name: box.y0 for name, box in usable.items()}
        spots = []
        for block, name in zip(blocks, choice, strict=True):
            box, y = usable[name], filled[name]
            need = block.height_mm(box.width)
            if y + need > box.y1 + 1e-6:
                break
            spots.append(Box(box.x0, y, box.x1, y + need))
            filled[name] = y + need + GAP
        else:
            pairs = zip(blocks, spots, strict=True)
            return tuple(item for block, spot in pairs for item in block.place(spot))
    return None
