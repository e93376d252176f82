"""Notes and legend: beside the boards over the title block, or on a sheet of their own."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.frame import usable_box
from asfitted.layout.legend import Legend, lay_out_legend
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, text_item, wrap
from asfitted.layout.single_line.earth_rows import SMALL_SIGN
from asfitted.layout.single_line.notes import note_sentences
from asfitted.layout.single_line.room import STROKES
from asfitted.layout.single_line.sheet_rooms import CLEAR_MM, SIDE_MM
from asfitted.layout.single_line.signs import (
    STROKES_SIGN,
    abbreviations_in,
    line_samples,
    signs_used,
    texts_used,
)
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import Item, Paper
    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.parts import Shown

SIDE_GAP_MM = 8.0
LEGEND_COLUMN_MM = 60.0
NOTES_X_MM = 5.0  # left edge of the title block to the notes above it
#: Signs that are drawn smaller than the others.
SMALL = {
    STROKES_SIGN: STROKES,
    "protective_earth": SMALL_SIGN,
    "earth_electrode": SMALL_SIGN,
}


def legend_of(model: Model, shown: Shown, at: Point, width_mm: float, columns: int) -> Legend:
    """Return the legend from its top left corner, without the abbreviations."""
    return lay_out_legend(
        at=at,
        width_mm=width_mm,
        columns=columns,
        symbols=signs_used(model, shown),
        catalogue=model.symbols,
        lines=line_samples(model, shown),
        sizes_mm=SMALL,
    )


def sentences_of(model: Model, shown: Shown) -> list[str]:
    """Return the notes, the last of them the abbreviations."""
    short = abbreviations_in(texts_used(model, shown))
    joined = "; ".join(f"{name} {words}" for name, words in short)
    return [*note_sentences(model, shown.parts), f"Abbreviations: {joined}."]


def notes_at(sentences: Sequence[str], at: Point, width_mm: float) -> tuple[list[Item], float]:
    """Return the notes from their top left corner, and the height they take in mm."""
    items = [text_item("notes:title", "Notes", at.moved(dy=TAG), TAG, bold=True)]
    y = at.y + TAG + 1.0
    for i, sentence in enumerate(sentences, start=1):
        for j, line in enumerate(wrap(f"{i}  {sentence}", width_mm, BODY)):
            y += line_pitch_mm(BODY)
            items.append(text_item(f"notes:{i}:{j}", line, Point(at.x, y)))
    return items, y + BODY / 3 - at.y


def side_items(model: Model, shown: Shown) -> tuple[list[Item], float]:
    """Return notes and legend beside the boards, and how far down the sheet they reach in mm."""
    area = usable_box("A3")
    at = Point(area.x1 - SIDE_MM + SIDE_GAP_MM, area.y0)
    width = area.x1 - at.x
    notes, height = notes_at(sentences_of(model, shown), at, width)
    under = at.moved(dy=height + SIDE_GAP_MM)
    legend = legend_of(model, shown, under, width, 2)
    return [*notes, *legend.items], under.y + legend.height_mm


def side_holds(model: Model, shown: Shown) -> bool:
    """Tell whether notes and legend fit above the title block."""
    _, bottom = side_items(model, shown)
    return bottom <= title_block_box("A3").y0 - CLEAR_MM


def items_from(model: Model, shown: Shown, top: float) -> list[Item] | None:
    """Return legend and notes side by side on the lower part of an A3 sheet, None if too high."""
    area, block = usable_box("A3"), title_block_box("A3")
    at = Point(area.x0, top)
    width = block.x0 - CLEAR_MM - area.x0
    legend = legend_of(model, shown, at, width, int(width // LEGEND_COLUMN_MM))
    beside = Point(block.x0 + NOTES_X_MM, top)
    notes, height = notes_at(sentences_of(model, shown), beside, area.x1 - beside.x)
    if top + legend.height_mm > area.y1 or top + height > block.y0 - CLEAR_MM:
        return None
    return [*legend.items, *notes]


def notes_pages(model: Model, shown: Shown, paper: Paper) -> list[list[Item]]:
    """Return the sheets that hold notes and legend alone: one, or two."""
    area = usable_box(paper)
    at = Point(area.x0, area.y0)
    if paper == "A3":
        found = items_from(model, shown, area.y0)
        if found is not None:
            return [found]
    bottom = title_block_box(paper).y0 - CLEAR_MM
    notes, height = notes_at(sentences_of(model, shown), at, area.width)
    under = at.moved(dy=height + SIDE_GAP_MM)
    legend = legend_of(model, shown, under, area.width, 3)
    if under.y + legend.height_mm <= bottom:
        return [[*notes, *legend.items]]
    return [notes, list(legend_of(model, shown, at, area.width, 3).items)]


def reference_items(number: str, paper: Paper) -> list[Item]:
    """Return the line that says on which sheet the notes and the legend are."""
    area, block = usable_box(paper), title_block_box(paper)
    words = f"Notes, legend and abbreviations: sheet {number}."
    y = block.y0 + BODY + 2.0 if paper == "A3" else block.y0 - CLEAR_MM - 1.0
    return [text_item("notes:reference", words, Point(area.x0, y))]
