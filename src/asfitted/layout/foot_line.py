"""One line at the foot of plain paper: which sheet of which job this is, and its caution.

For sheets without frame and title block, such as label stock, where the paper belongs to the
labels. The items bear the names of the fields of a title block.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.lettering import LABEL, shortened
from asfitted.layout.sheet_layout import PAPERS, Item, Text

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Paper
    from asfitted.layout.title_block import TitleFacts

#: Edge of the paper that an office printer may leave blank, mm (common practice).
PRINTER_MM = 8.0
FOOT_MM = 4.0  # room of the line above that edge
GAP_MM = 3.0
SCALE = "Print at full size."
CAUTION = "Design aid, not a certificate."


def printable_box(paper: Paper) -> Box:
    """Return what may be printed on plain paper: inside the printer's edge, above the line."""
    width, height = PAPERS[paper]
    return Box(PRINTER_MM, PRINTER_MM, width - PRINTER_MM, height - PRINTER_MM - FOOT_MM)


def foot_line_items(facts: TitleFacts) -> tuple[Item, ...]:
    """Return the fields of the line, left to right; a long title is shortened."""
    job, room = facts.job, printable_box(facts.paper)
    baseline = room.y1 + FOOT_MM - 0.6
    told = [
        ("number", f"{job.number}-{facts.number}"),
        ("revision, sheet", f"{job.revision}, {int(facts.number)} of {facts.total}"),
        ("status", job.status),
        ("date of issue", job.date),
        ("scale", SCALE),
        ("caution", CAUTION),
    ]
    left = room.width - sum(_width(words) + GAP_MM for _, words in told)
    told.insert(1, ("title", shortened(facts.sheet_title, max(left, 0.0), LABEL)))
    items, x = [], room.x0
    for name, words in told:
        text = Text(Point(x, baseline), words, LABEL)
        items.append(Item(f"title-block:{name}", "frame-label", (text,)))
        x += _width(words) + GAP_MM
    return tuple(items)


def _width(words: str) -> float:
    return text_width_mm(words, LABEL)
