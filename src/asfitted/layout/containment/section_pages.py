"""All cross-sections of a job on as many sheets as they need, with the tables of their cables."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.containment.cross_section import CrossSection, cross_section
from asfitted.layout.containment.developed_run import developed_runs
from asfitted.layout.containment.section_drawing import SectionBlock
from asfitted.layout.containment.section_places import section_places
from asfitted.layout.containment.section_words import cable_table
from asfitted.layout.containment.shelf_flow import ShelfFlow, Slot
from asfitted.layout.containment.strip_pages import TABLE_COLUMNS, page_key, paper_of, strip_pages
from asfitted.layout.elevation.panels import NotesPanel
from asfitted.layout.frame import usable_box, zone_of
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from asfitted.layout.containment.shelf_flow import PlacedTable
    from asfitted.layout.containment.strip_pages import StripPages
    from asfitted.layout.sheet_layout import Item, Paper
    from asfitted.layout.sheet_model import Model, Numbers

KEY = "containment-sections"
STAND_IN = "sheet 00, zone A1"  # as long as what is written once the sheets are numbered
NOTES = (
    (
        "Cables are drawn at their true overall size from the dimension tables. Tinted: "
        "power. With a ring inside: data. Flat cables lie flat."
    ),
    (
        "In trunking, conduit and duct the places of the cables are one way in which they "
        "fit, not an order to lay them in. On tray, basket and ladder: one layer, power from "
        "the left edge."
    ),
    (
        "Grouping is counted apart from fill: see the calculations. Walls of trunking and "
        "conduit are as thick as the fill takes them."
    ),
)


@dataclass(frozen=True)
class PlacedSection:
    """A cross-section in its place."""

    section: CrossSection
    slot: Slot


@dataclass(frozen=True)
class SectionPages:
    """Everything on the sheets of cross-sections."""

    paper: Paper
    width: float  # of a block
    sections: tuple[PlacedSection, ...]
    tables: tuple[PlacedTable, ...]

    @property
    def count(self) -> int:
        """How many sheets there are."""
        slots = [*(s.slot for s in self.sections), *(t.slot for t in self.tables)]
        return max((slot.page for slot in slots), default=-1) + 1

    @property
    def keys(self) -> dict[int, str]:
        """Key of the sheet of each cross-section, by its number."""
        return {p.section.place.number: section_key(p.slot.page) for p in self.sections}

    def items(
        self, page: int, model: Model, strips: StripPages, numbers: Numbers
    ) -> tuple[Item, ...]:
        """Return all items of a sheet."""
        made: list[Item] = []
        for placed in self.sections:
            if placed.slot.page == page:
                where = strip_words(placed.section, strips, numbers)
                block = SectionBlock(placed.section, model, self.paper, self.width, where)
                made += block.items(placed.slot.at)
        for table in self.tables:
            if table.slot.page == page:
                made += table.items()
        return (*made, *notes_items(NOTES, self.paper))


def section_key(page: int) -> str:
    """Return the key of a sheet of cross-sections, from 0."""
    return KEY if page == 0 else f"{KEY}/{page + 1}"


def section_pages(model: Model) -> SectionPages:
    """Lay out the cross-sections of all runs of a job. Same job, same places."""
    paper = paper_of(model)
    flow = ShelfFlow(paper, TABLE_COLUMNS[paper])
    placed: list[PlacedSection] = []
    runs = developed_runs(model.installation, model.results.sections)
    found = [cross_section(model, place) for place in section_places(runs)]
    heights = [SectionBlock(s, model, paper, flow.column_mm, STAND_IN).height_mm for s in found]
    for i, section in enumerate(found):
        row = heights[i - i % flow.columns : i - i % flow.columns + flow.columns]
        slot = flow.place(flow.column_mm, max(heights[i], *row))
        placed.append(PlacedSection(section, slot))
        flow.add_table(f"cables:{section.place.number}", cable_table(section, model))
    flow.finish()
    return SectionPages(paper, flow.column_mm, tuple(placed), tuple(flow.tables))


def strips_with_marks(model: Model) -> StripPages:
    """Return the strips, their marks knowing the sheets of the cross-sections."""
    return strip_pages(model, section_pages(model).keys)


def strip_words(section: CrossSection, strips: StripPages, numbers: Numbers) -> str:
    """Return sheet and zone of the place of a cross-section on its strip."""
    place = section.place
    found = strips.place_of(place.developed.run.tag, place.along)
    if found is None:
        return ""
    page, at = found
    sheet = numbers.by_key.get(page_key(page), "–")
    return f"sheet {sheet}, zone {zone_of(strips.paper, at)}"


def notes_items(notes: tuple[str, ...], paper: Paper) -> tuple[Item, ...]:
    """Return notes left of the title block, where the paper leaves room for them."""
    area, block = usable_box(paper), title_block_box(paper)
    width = block.x0 - 5.0 - area.x0
    panel = NotesPanel(notes)
    height = panel.height(width)
    if height is None or height > area.y1 - block.y0:
        return ()
    return panel.items(Point(area.x0, block.y0), width)
