"""All cross-sections of a job on as many sheets as they need, with the tables of their cables."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.layout.containment.cross_section import CrossSection, cross_section
from asfitted.layout.containment.developed_run import developed_runs
from asfitted.layout.containment.section_drawing import SectionBlock
from asfitted.layout.containment.section_places import section_places
from asfitted.layout.containment.section_words import cable_table
from asfitted.layout.containment.sheet_notes import place_notes
from asfitted.layout.containment.shelf_flow import TABLE_GAP_MM, ShelfFlow, Slot, tables_heading
from asfitted.layout.containment.strip_pages import TABLE_COLUMNS, page_key, paper_of, strip_pages
from asfitted.layout.frame import zone_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.containment.sheet_notes import SheetNotes
    from asfitted.layout.containment.shelf_flow import PlacedTable
    from asfitted.layout.containment.strip_pages import StripPages
    from asfitted.layout.sheet_layout import Item, Paper
    from asfitted.layout.sheet_model import Model, Numbers

KEY = "containment-sections"
SMALL: Paper = "A4"
TABLES_ALONE = "Cross-sections: tables of the cables"
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
    notes: SheetNotes

    @property
    def count(self) -> int:
        """How many sheets there are."""
        if not self.sections:
            return 0
        slots = [*(s.slot for s in self.sections), *(t.slot for t in self.tables)]
        slots += [self.notes.slot] if self.notes.slot else []
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
        if all(placed.slot.page != page for placed in self.sections):
            made.append(tables_heading(TABLES_ALONE, self.paper))
        return (*made, *self.notes.items(page))


def section_key(page: int) -> str:
    """Return the key of a sheet of cross-sections, from 0."""
    return KEY if page == 0 else f"{KEY}/{page + 1}"


def section_pages(model: Model) -> SectionPages:
    """Lay out the cross-sections of all runs of a job. Same job, same places.

    A few that all stand on one A4 go there; else they go on the paper of the job.
    """
    runs = developed_runs(model.installation, model.results)
    found = [cross_section(model, place) for place in section_places(runs)]
    if len(found) <= TABLE_COLUMNS[SMALL]:
        try:
            small = _on_paper(found, model, SMALL)
        except DoesNotFitError:
            small = None
        if small is not None and small.count <= 1:
            return small
    return _on_paper(found, model, paper_of(model))


def _on_paper(found: Sequence[CrossSection], model: Model, paper: Paper) -> SectionPages:
    """Lay out all cross-sections on one paper."""
    flow = ShelfFlow(paper, TABLE_COLUMNS[paper])
    placed: list[PlacedSection] = []
    heights = [SectionBlock(s, model, paper, flow.column_mm, STAND_IN).height_mm for s in found]
    for start in range(0, len(found), flow.columns):
        row = found[start : start + flow.columns]
        placed += _row(row, max(heights[start : start + flow.columns]), model, flow)
    notes = place_notes(NOTES, paper, flow)
    flow.finish()
    return SectionPages(paper, flow.column_mm, tuple(placed), tuple(flow.tables), notes)


def _row(
    row: Sequence[CrossSection], height_mm: float, model: Model, flow: ShelfFlow
) -> list[PlacedSection]:
    """Place sections side by side, their tables under them where all have room there."""
    tables = [(f"cables:{s.place.number}", cable_table(s, model)) for s in row]
    under = max(flow.table_mm(table) for _, table in tables) + TABLE_GAP_MM
    is_one = height_mm + under <= flow.area.height
    placed = []
    for section, (ident, table) in zip(row, tables, strict=True):
        slot = flow.place(flow.column_mm, height_mm + under if is_one else height_mm)
        placed.append(PlacedSection(section, slot))
        if is_one:
            flow.set_table(
                ident, table, Slot(slot.page, slot.at.moved(dy=height_mm + TABLE_GAP_MM))
            )
        else:
            flow.add_table(ident, table)
    return placed


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
