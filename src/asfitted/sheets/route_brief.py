"""The route brief: a few A4 pages for whoever fixes the runs and pulls the cables."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.brief.card import card_block
from asfitted.layout.brief.card_words import card_words, looked_up
from asfitted.layout.brief.change_words import change_table, standing_words
from asfitted.layout.brief.drilling_words import zone_words
from asfitted.layout.brief.fixings import fixing_table, position_words, source_words
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
from asfitted.layout.brief.index import card_entry, card_key, index_lines, wall_entry, wall_key
from asfitted.layout.brief.live_words import caution_words, live_and_by_others
from asfitted.layout.brief.wall_pages import best_walls
from asfitted.layout.brief.wall_sketch import (
    keep_clear_words,
    sketch_block,
    sketch_of,
    walls_to_do,
)
from asfitted.layout.brief.wall_table import work_table
from asfitted.layout.brief.work_order import order_of_work
from asfitted.layout.sheet_model import Content, SheetPlan

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.brief.flow import Caution
    from asfitted.layout.brief.wall_sketch import WallWork
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 130
READERS = ("second-electrician",)
LATE = 2  # it names the sheets on which what changed is drawn
CARD_WORDS = (
    "Label both ends with the words of the head of the card, then which end it is, as on the label "
    "sheets. Waste holds the rounding up: see the cut list."
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
    room_mm = AREA.height - caution.height_mm
    before = _of_part("order of work", _first_blocks(model, walls))
    after = [
        *_of_part("cable cards", _card_blocks(model)),
        *_of_part("fixings", _fixing_blocks(model)),
    ]
    shown = [_of_part("walls", _wall_blocks(work, model)) for work in walls]
    larger = [
        _of_part("walls", _wall_blocks(work.larger, model)) if work.larger else None
        for work in walls
    ]
    shown = best_walls(before, shown, larger, after, room_mm)
    pages = pages_of([*before, *(block for wall in shown for block in wall), *after], room_mm)
    return [
        SheetPlan(
            f"route-brief/{i:02d}",
            title,
            PAPER,
            "Route brief",
            BriefPage(caution, page),
            also=tuple(block.key for block in page if block.key),
        )
        for i, (title, page) in enumerate(zip(_titles(pages), pages, strict=True), start=1)
    ]


def _of_part(part: str, blocks: Sequence[Block | Rows]) -> list[Block | Rows]:
    """Return blocks that know which part of the brief they belong to."""
    return [replace(block, part=part) for block in blocks]


def _titles(pages: Sequence[tuple[Block, ...]]) -> list[str]:
    """Return the title of each page by what it holds; pages that hold the same are numbered."""
    held = [" and ".join(dict.fromkeys(block.part for block in page)) for page in pages]
    titles = []
    for place, parts in enumerate(held):
        count, number = held.count(parts), held[: place + 1].count(parts)
        of = f", part {number} of {count}" if count > 1 else ""
        titles.append(f"Route brief: {parts}{of}")
    return titles


def _first_blocks(model: Model, walls: Sequence[WallWork]) -> list[Block | Rows]:
    """Return what is live, changes, order of work, where things are told, and zones."""
    return [
        heading("brief:live", "What is live or by others, and where it is isolated"),
        *_paragraphs("brief:live", live_and_by_others(model)),
        *_change_blocks(model),
        heading("brief:order", "Order of work"),
        table_rows("brief:steps", order_of_work(model, walls)),
        *_index_blocks(model, walls),
        heading("brief:zones", "Drilling and notching"),
        *_paragraphs("brief:zone", zone_words()),
    ]


def _change_blocks(model: Model) -> list[Block | Rows]:
    """Return what changed since the last print, with the sheets that draw it."""
    told = change_table(model)
    words = paragraph("brief:changes:since", standing_words(model), joined=bool(told.table.rows))
    blocks: list[Block | Rows] = [heading("brief:changes", "What changed since the last print")]
    blocks.append(words)
    if told.table.rows:
        blocks.append(table_rows("brief:change", told.table, told.sheets))
    return blocks


def _index_blocks(model: Model, walls: Sequence[WallWork]) -> list[Block]:
    """Return on which sheet each wall and the card of each cable stand."""
    names = dict.fromkeys(work.content.wall.name for work in walls)
    cables = [c.tag for c in model.installation.cables.values() if c.state == "new"]
    return [
        heading("brief:index", "Where it stands: walls and cable cards, with their sheets"),
        *index_lines("brief:index", map(wall_entry, names), map(card_entry, cables)),
    ]


def _paragraphs(ident: str, lines: tuple[str, ...]) -> list[Block]:
    return [paragraph(f"{ident}:{i}", line) for i, line in enumerate(lines, start=1)]


def _wall_blocks(work: WallWork, model: Model) -> list[Block | Rows]:
    """Return a wall: heading, sketch, where not to drill, and the table."""
    name = f"brief:wall:{work.content.wall.name}"
    title = f"Wall {work.content.wall.name}, {work.content.wall.room}"
    sketch = sketch_of(work)
    return [
        replace(heading(name, title, beside=sketch.words), key=wall_key(work.content.wall.name)),
        sketch_block(sketch),
        paragraph(f"{name}:clear", keep_clear_words(work), joined=True),
        table_rows(f"{name}:work", work_table(work, model)),
    ]


def _card_blocks(model: Model) -> list[Block]:
    """Return a card for each new cable, under what the words of a card mean."""
    looked = looked_up(model)
    cards = [
        replace(card_block(card_words(cable, model, looked)), key=card_key(cable.tag))
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
    words = f"{position_words()} {source_words(model)}".rstrip()
    return [
        heading("brief:fixings", "Fixings: how far apart, how many, and why"),
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
