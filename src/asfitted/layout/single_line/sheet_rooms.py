"""The room that a sheet of the diagram has, by paper and by what else stands on the sheet."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box
from asfitted.layout.frame import usable_box
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Paper
    from asfitted.layout.sheet_model import Model

CLEAR_MM = 3.0  # between the drawing and the title block
FOOT_MM = 6.0  # one line under the boards of an upright sheet: where the notes are
SIDE_MM = 178.0  # the column right of the boards for notes and legend, with its gap


@dataclass(frozen=True)
class SheetRoom:
    """Where boards stand on a sheet; with a side, notes and legend stand right of them."""

    paper: Paper
    area: Box
    has_side: bool = False


def _above_block(paper: Paper, foot_mm: float) -> Box:
    area = usable_box(paper)
    return Box(area.x0, area.y0, area.x1, title_block_box(paper).y0 - CLEAR_MM - foot_mm)


def _beside() -> Box:
    area = usable_box("A3")
    return Box(area.x0, area.y0, area.x1 - SIDE_MM, area.y1)


#: Over the whole width, as far down as the title block.
WIDE = SheetRoom("A3", _above_block("A3", 0.0))
#: Left of notes, legend and title block, over the whole height.
BESIDE = SheetRoom("A3", _beside(), has_side=True)
#: The upright A4 sheet, over the title block.
UPRIGHT = SheetRoom("A4 portrait", _above_block("A4 portrait", FOOT_MM))


def board_rooms(model: Model) -> tuple[SheetRoom, ...]:
    """Return the rooms that a sheet of boards may have; the first is taken where both serve."""
    return (UPRIGHT,) if model.installation.job.paper == "A4" else (WIDE, BESIDE)


def whole_room(model: Model) -> SheetRoom:
    """Return the room for a job that stands on one sheet with its intake."""
    return UPRIGHT if model.installation.job.paper == "A4" else BESIDE
