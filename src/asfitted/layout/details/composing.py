"""Puts figures, notes, tables and legend of one or more subjects on sheets."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.geometry import Box, Point
from asfitted.layout.details.arranging import arranged
from asfitted.layout.details.blocks import LegendBlock, NotesBlock, TableBlock
from asfitted.layout.details.pairs import LINE_WORDS, PATTERNS, PairsFigure
from asfitted.layout.frame import usable_box
from asfitted.layout.legend import LineSample, used_symbols
from asfitted.layout.lettering import BODY, VIEW, line_pitch_mm, lines_of_text, text_item, wrap
from asfitted.layout.linework import rectangle, widths_for
from asfitted.layout.sheet_layout import Item
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.layout.details.blocks import Block
    from asfitted.layout.details.figure import Figure
    from asfitted.layout.details.subject import Subject
    from asfitted.layout.sheet_layout import Paper, SymbolInfo

TITLE_MM = 8.0
MOST_NAMED = 2  # subjects that the title of a sheet names


@dataclass(frozen=True)
class Page:
    """What stands on one detail sheet: subjects, or a part of one whose rest is on another."""

    parts: tuple[Subject, ...]
    paper: Paper

    @property
    def figures(self) -> tuple[Figure, ...]:
        """The figures of all its subjects."""
        return tuple(figure for part in self.parts for figure in part.figures)

    @property
    def title(self) -> str:
        """What the sheet is called."""
        if len(self.parts) == 1:
            return self.parts[0].title
        if len(self.parts) > MOST_NAMED:
            return "Details of connections"
        return f"Details: {', '.join(part.name for part in self.parts)}"


def pages(subject: Subject, paper: Paper, catalogue: Mapping[str, SymbolInfo]) -> list[Page]:
    """Return the sheets of one subject: figures in order, the table on the last if it fits.

    Notes and caution stand on each sheet. The table is None on every sheet but the last.
    """
    bare = replace(subject, table=None)
    made: list[tuple[Figure, ...]] = []
    for figure in subject.figures:
        wider = (*made[-1], figure) if made else (figure,)
        if made and fits(Page((replace(bare, figures=wider),), paper), catalogue):
            made[-1] = wider
        else:
            made.append((figure,))
    found = [Page((replace(bare, figures=group),), paper) for group in made]
    last = Page((replace(subject, figures=made[-1]),), paper)
    if fits(last, catalogue):
        found[-1] = last
    return found


def fits(page: Page, catalogue: Mapping[str, SymbolInfo]) -> bool:
    """Tell whether everything on a sheet finds room."""
    return _laid_out(page, catalogue) is not None


def compose(page: Page, catalogue: Mapping[str, SymbolInfo]) -> tuple[Item, ...]:
    """Return the items of one sheet.

    Raises:
        DoesNotFitError: one figure with its notes and legend is larger than the sheet.
    """
    items = _laid_out(page, catalogue)
    if items is None:
        raise DoesNotFitError(f"{page.title}: a figure does not fit {page.paper}")
    return items


def _laid_out(page: Page, catalogue: Mapping[str, SymbolInfo]) -> tuple[Item, ...] | None:
    """Return the items of a sheet, None where they do not fit."""
    area = usable_box(page.paper)
    head, top = _head(page, area)
    blocks = _blocks(page, catalogue)
    room = Box(area.x0, top, area.x1, area.y1)
    found = arranged(page.figures, blocks, room, title_block_box(page.paper))
    if found is None:
        return None
    placed = zip(blocks, found.blocks, strict=True)
    return (
        *head,
        *(
            i
            for f, at in zip(page.figures, found.figures, strict=True)
            for i in _drawn(f, at, page)
        ),
        *(i for block, box in placed for i in block.place(Point(box.x0, box.y0), box.width)),
    )


def _drawn(figure: Figure, at: Point, page: Page) -> list[Item]:
    """Return the items of a figure; their idents begin with the first thing it applies to."""
    items = figure.draw(at, page.paper)
    if not figure.tags:
        return list(items)
    return [
        item
        if item.ident.startswith("legend:")
        else replace(item, ident=f"{figure.tags[0]}:{item.ident}")
        for item in items
    ]


def _head(page: Page, area: Box) -> tuple[tuple[Item, ...], float]:
    """Return title and cautions, and where the figures may begin."""
    at = Point(area.x0, area.y0 + VIEW)
    title = text_item("details:title", page.title, at, VIEW, bold=True)
    lines: list[str] = []
    for part in page.parts:
        of = f" {part.name[0].upper()}{part.name[1:]}:" if len(page.parts) > 1 else ""
        lines += wrap(f"Caution.{of} {part.caution}", area.width - 6.0, BODY, bold=True)
    top = area.y0 + TITLE_MM
    height = len(lines) * line_pitch_mm(BODY) + 2.4
    box = Box(area.x0, top, area.x1, top + height)
    width = widths_for(page.paper).wide
    edge = Item("details:caution:edge", "outline", (rectangle(box, width_mm=width),))
    words = lines_of_text(lines, Point(box.x0 + 3.0, top + BODY + 1.6), bold=True)
    return (title, edge, Item("details:caution", "text", words)), box.y1 + 5.0


def _blocks(page: Page, catalogue: Mapping[str, SymbolInfo]) -> list[Block]:
    """Return tables, notes and legend of a sheet, those it has."""
    many = len(page.parts) > 1
    blocks: list[Block] = []
    for part in page.parts:
        if part.table is not None:
            title = f"{part.table_title}: {part.name}" if many else part.table_title
            blocks.append(TableBlock(part.key, title, part.table))
    for part in page.parts:
        if part.notes:
            title = f"Notes: {part.name}" if many else "Notes"
            blocks.append(NotesBlock(part.key, title, part.notes))
    drawn = tuple(i for f in page.figures for i in f.draw(Point(0.0, 0.0), page.paper))
    explained = used_symbols(item for item in drawn if item.ident.startswith("legend:"))
    symbols = tuple(name for name in used_symbols(drawn) if name not in explained)
    lines = _line_samples(page)
    if symbols or lines:
        blocks.append(LegendBlock(symbols, lines, catalogue, page.paper))
    return blocks


def _line_samples(page: Page) -> tuple[LineSample, ...]:
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
    return tuple(samples)
