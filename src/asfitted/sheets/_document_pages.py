"""Turns blocks of text into planned sheets: heading, running text, title block."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.geometry import Box, Point
from asfitted.layout.document.flow import balanced_pages, is_thin, pages_of
from asfitted.layout.document.page import page_items
from asfitted.layout.document.strips import strips_of
from asfitted.layout.frame import usable_box
from asfitted.layout.lettering import (
    BODY,
    TAG,
    VIEW,
    fits,
    line_pitch_mm,
    lines_of_text,
    text_item,
    wrap,
)
from asfitted.layout.sheet_layout import Item
from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from asfitted.layout.document.blocks import Block
    from asfitted.layout.document.flow import Placed
    from asfitted.layout.sheet_layout import Paper
    from asfitted.layout.sheet_model import Numbers

TITLE_MM = 10.5
GAP = 3.0
ASIDE_GAP = 4.0


@dataclass(frozen=True)
class DocumentPage:
    """One page of running text, with what stands beside the title block on a wide page."""

    heading: str
    placed: tuple[Placed, ...]
    aside: tuple[str, ...] = ()


def text_room(paper: Paper) -> Box:
    """Return the box for running text: under the heading, above the title block."""
    area = usable_box(paper)
    return Box(area.x0, area.y0 + TITLE_MM, area.x1, title_block_box(paper).y0 - GAP)


def plan_document(
    *,
    key: str,
    title: str,
    section: str,
    blocks: Sequence[Block],
    heading: str = "",
    papers: tuple[Paper, ...] = ("A4 portrait",),
    aside: tuple[str, ...] = (),
    part_words: str = ", part {} of {}",
) -> list[SheetPlan]:
    """Return as many plans as the text needs.

    Args:
        key: names the sheets for references; several pages are ``key-1``, ``key-2``.
        title: of the sheet, in the title block and the drawing list.
        section: bookmark group.
        blocks: what is written, in order.
        heading: large words above the text; the title where left out.
        papers: to try in order; the first on which every table fits is that of every page.
        aside: notes beside the title block; only on a landscape page.
        part_words: what is set behind the title where there are several pages.

    Raises:
        DoesNotFitError: a table is too wide or one row too high for a page.
    """
    paper, pages = _broken(blocks, papers)
    plans = []
    for number, placed in enumerate(pages, start=1):
        part = part_words.format(number, len(pages)) if len(pages) > 1 else ""
        name = f"{key}-{number}" if part else key
        page = DocumentPage((heading or title) + part, placed, aside)
        also = (key,) if part and number == 1 else ()  # who names the text finds its first page
        plans.append(SheetPlan(name, title + part, paper, section, page, also=also))
    return plans


def plan_one_page(
    *,
    key: str,
    title: str,
    section: str,
    heading: str,
    most: int,
    blocks: Callable[[int], Sequence[Block]],
) -> list[SheetPlan]:
    """Return the plan of a text that is to stay on one page: it names fewer things until it does.

    ``blocks`` gives the text that names at most so many things of a kind; ``most`` is where to
    begin. A text too long even with one of each runs on.
    """
    plans: list[SheetPlan] = []
    for named in range(most, 0, -1):
        plans = plan_document(
            key=key, title=title, section=section, heading=heading, blocks=blocks(named)
        )
        if len(plans) == 1:
            break
    return plans


def _broken(
    blocks: Sequence[Block], papers: tuple[Paper, ...]
) -> tuple[Paper, tuple[tuple[Placed, ...], ...]]:
    """Return the first paper that holds the text, and its pages."""
    for paper in papers[:-1]:
        try:
            return paper, _filled(blocks, text_room(paper), part_words=False)
        except DoesNotFitError:
            continue
    return papers[-1], _filled(blocks, text_room(papers[-1]), part_words=True)


def _filled(
    blocks: Sequence[Block], room: Box, *, part_words: bool
) -> tuple[tuple[Placed, ...], ...]:
    """Return the pages of a text; what would leave the last nearly empty is set closer or shared.

    Raises:
        DoesNotFitError: a table is too wide or one row too high for a page.
    """
    strips = strips_of(blocks, room.width, part_words=part_words)
    pages = pages_of(strips, room.height)
    if not is_thin(pages, room.height):
        return pages
    closer = strips_of(blocks, room.width, part_words=part_words, close=True)
    fewer = pages_of(closer, room.height)
    return fewer if len(fewer) < len(pages) else balanced_pages(strips, room.height)


def build_document(plan: SheetPlan, numbers: Numbers) -> Content:
    """Lay out one page of running text, with the sheet numbers it refers to."""
    page: DocumentPage = plan.payload
    area, room = usable_box(plan.paper), text_room(plan.paper)
    cap_mm = VIEW if fits(page.heading, area.width, VIEW, bold=True) else TAG
    at = Point(area.x0, area.y0 + VIEW)
    heading = text_item("page:heading", page.heading, at, cap_mm, bold=True)
    body = page_items(page.placed, Point(room.x0, room.y0), numbers)
    return Content((heading, *body, *_aside(page.aside, plan.paper)), scale="Not to scale")


def _aside(notes: tuple[str, ...], paper: Paper) -> list[Item]:
    """Return the notes left of the title block."""
    area, block = usable_box(paper), title_block_box(paper)
    width = block.x0 - ASIDE_GAP - area.x0
    items = []
    at = Point(area.x0, block.y0 + BODY + 0.6)
    for place, note in enumerate(notes):
        lines = wrap(note, width, BODY)
        items.append(Item(f"page:aside:{place}", "text", lines_of_text(lines, at)))
        at = at.moved(dy=len(lines) * line_pitch_mm(BODY) + 0.6)
    return items
