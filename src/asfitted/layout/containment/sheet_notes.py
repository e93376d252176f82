"""Notes on sheets of strips and cross-sections: beside the title block, else once like a view."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.elevation.panels import NotesPanel
from asfitted.layout.frame import usable_box
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from asfitted.layout.containment.shelf_flow import ShelfFlow, Slot
    from asfitted.layout.sheet_layout import Item, Paper

LEAST_MM = 120.0  # width beside the title block


@dataclass(frozen=True)
class SheetNotes:
    """Notes of a set of sheets. ``slot`` None: they stand on each, beside the title block."""

    notes: tuple[str, ...]
    paper: Paper
    width: float
    slot: Slot | None

    def items(self, page: int) -> tuple[Item, ...]:
        """Return the notes as far as they stand on a sheet, from 0."""
        if self.slot is None:
            box = _beside_title(self.paper)
            return NotesPanel(self.notes).items(Point(box.x0, box.y0), self.width)
        if self.slot.page != page:
            return ()
        return NotesPanel(self.notes).items(self.slot.at, self.width)


def place_notes(notes: tuple[str, ...], paper: Paper, flow: ShelfFlow) -> SheetNotes:
    """Return notes at their place; where it is among the views, they stand there once."""
    box = _beside_title(paper)
    panel = NotesPanel(notes)
    if box.width > LEAST_MM and panel.height_mm(box.width) <= box.height:
        return SheetNotes(notes, paper, box.width, None)
    width = flow.column_mm
    slot = flow.place(width, panel.height_mm(width), under_heading=True)
    return SheetNotes(notes, paper, width, slot)


def _beside_title(paper: Paper) -> Box:
    area, block = usable_box(paper), title_block_box(paper)
    return Box(area.x0, block.y0, block.x0 - 5.0, area.y1)
