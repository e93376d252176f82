"""What of a sheet elevations may use, by paper: inside the frame and clear of the title block."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box
from asfitted.layout.frame import usable_box
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Paper
    from asfitted.resolve.installation import Installation

CLEAR_OF_TITLE_MM = 3.0


def drawing_paper(installation: Installation) -> Paper:
    """Return the paper of the drawings that the job prefers."""
    return "A4" if installation.job.paper == "A4" else "A3"


def room_on(paper: Paper) -> Box:
    """Return the area a drawing may use, the title block still in it."""
    return usable_box(paper)


def title_room(paper: Paper) -> Box:
    """Return the title block with the clear margin round it."""
    box = title_block_box(paper)
    return Box(box.x0 - CLEAR_OF_TITLE_MM, box.y0 - CLEAR_OF_TITLE_MM, box.x1, box.y1)


def above_title(paper: Paper) -> Box:
    """Return the area above the title block, as wide as the sheet."""
    room = room_on(paper)
    return Box(room.x0, room.y0, room.x1, title_room(paper).y0)
