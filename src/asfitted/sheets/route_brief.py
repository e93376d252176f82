"""The route brief: a few A4 pages for whoever fixes the runs and pulls the cables."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.brief.brief_words import (
    caution_words,
    change_words,
    fixing_table,
    live_and_by_others,
    order_of_work,
    zone_words,
)
from asfitted.layout.brief.card import card_block
from asfitted.layout.brief.card_words import card_words, looked_up
from asfitted.layout.brief.flow import (
    AREA,
    PAPER,
    Block,
    Rows,
    caution_of,
    heading,
    pages_of,
    paragraph,
    table_rows,
)
from asfitted.layout.brief.wall_sketch import (
    keep_clear_words,
    sketch_block,
    sketch_of,
    walls_to_do,
    work_table,
)
from asfitted.layout.sheet_model import Content, SheetPlan

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.brief.flow import Caution
    from asfitted.layout.brief.wall_sketch import WallWork
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 130
READERS = ("second-electrician",)
CARD_WORDS = (
    "Labels at both ends: the words of the head. Waste holds the rounding up: see the cut list."
)
IN_HANDOVER = False  # it is made for whoever pulls the cables, and nobody else


@dataclass(frozen=True)
class BriefPage:
    """One page: its blocks under the cautions."""

    caution: Caution
    blocks: tuple[Block, ...]


def plan(model: Model) -> list[SheetPlan]:
    """Plan the pages; none where nothing is new or taken out."""
    cables = [c for c in model.installation.cables.values() if c.state == "new"]
    walls = walls_to_do(model)
    if not cables and not walls:
        return []
    caution = caution_of(caution_words(model))
    parts: dict[str, list[Block | Rows]] = {
        "order of work": _first_blocks(model),
        "walls": [b for w in walls for b in _wall_blocks(w, model)],
        "cable cards": [*_card_blocks(model)],
        "fixings": _fixing_blocks(model),
    }
    told = [replace(block, part=part) for part, blocks in parts.items() for block in blocks]
    pages = pages_of(told, AREA.height - caution.height_mm)
    return [
        SheetPlan(f"route-brief/{i:02d}", title, PAPER, "Route brief", BriefPage(caution, page))
        for i, (title, page) in enumerate(zip(_titles(pages), pages, strict=True), start=1)
    ]


def _titles(pages: Sequence[tuple[Block, ...]]) -> list[str]:
    """Return the title of each page by what it holds; pages that hold the same are numbered."""
    held = [" and ".join(dict.fromkeys(block.part for block in page)) for page in pages]
    titles = []
    for place, parts in enumerate(held):
        count, number = held.count(parts), held[: place + 1].count(parts)
        of = f", part {number} of {count}" if count > 1 else ""
        titles.append(f"Route brief: {parts}{of}")
    return titles


def _first_blocks(model: Model) -> list[Block | Rows]:
    """Return order of work, what is live, changes and zones."""
    return [
        heading("brief:changes", "What changed since the last print"),
        *_paragraphs("brief:change", change_words(model)),
        heading("brief:live", "What is live or by others"),
        *_paragraphs("brief:live", live_and_by_others(model)),
        heading("brief:order", "Order of work"),
        table_rows("brief:steps", order_of_work(model)),
        heading("brief:zones", "Drilling and notching"),
        *_paragraphs("brief:zone", zone_words()),
    ]


def _paragraphs(ident: str, lines: tuple[str, ...]) -> list[Block]:
    return [paragraph(f"{ident}:{i}", line) for i, line in enumerate(lines, start=1)]


def _wall_blocks(work: WallWork, model: Model) -> list[Block | Rows]:
    """Return a wall: heading, sketch, where not to drill, and the table."""
    name = f"brief:wall:{work.content.wall.name}"
    title = f"Wall {work.content.wall.name}, {work.content.wall.room}"
    sketch = sketch_of(work)
    return [
        heading(name, title, beside=sketch.words),
        sketch_block(sketch),
        paragraph(f"{name}:clear", keep_clear_words(work), joined=True),
        table_rows(f"{name}:work", work_table(work, model)),
    ]


def _card_blocks(model: Model) -> list[Block]:
    """Return a card for each new cable, under what the words of a card mean."""
    looked = looked_up(model)
    cards = [
        card_block(card_words(cable, model, looked))
        for cable in model.installation.cables.values()
        if cable.state == "new"
    ]
    if not cards:
        return []
    head = heading("brief:cards", "Cable cards")
    return [head, paragraph("brief:cards:words", CARD_WORDS, joined=True), *cards]


def _fixing_blocks(model: Model) -> list[Block | Rows]:
    table = fixing_table(model)
    if not table.rows:
        return []
    words = "At most these centres; one near each end and each side of a bend (common practice)."
    return [
        heading("brief:fixings", "Fixing centres and count"),
        paragraph("brief:fixings:words", words, joined=True),
        table_rows("brief:fixing", table),
    ]


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - all is planned
    """Lay out one page."""
    page: BriefPage = plan.payload
    items = list(page.caution.items())
    y = AREA.y0 + page.caution.height_mm
    for block in page.blocks:
        items += block.draw(Point(AREA.x0, y), numbers)
        y += block.height_mm + block.gap_mm
    return Content(tuple(items), scale="As stated")
