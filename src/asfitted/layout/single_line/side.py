"""Notes and legend: the column right of the boards, over the title block."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.frame import usable_box
from asfitted.layout.legend import Legend, lay_out_legend
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, text_item, wrap
from asfitted.layout.single_line.notes import note_sentences
from asfitted.layout.single_line.signs import (
    abbreviations_in,
    line_samples,
    signs_used,
    texts_used,
)
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.parts import Part

SIDE_MM = 178.0  # the column right of the boards, with its gap
SIDE_GAP_MM = 8.0
CLEAR_MM = 3.0  # between the words here and what stands next to them
AREA = usable_box("A3")


def legend_at(model: Model, parts: Sequence[Part], at: Point, *, has_intake: bool) -> Legend:
    """Return the legend of a sheet from its top left corner."""
    short = abbreviations_in(texts_used(model, parts, has_intake=has_intake))
    joined = "; ".join(f"{name} {words}" for name, words in short)
    return lay_out_legend(
        at=at,
        width_mm=AREA.x1 - at.x,
        columns=2,
        symbols=signs_used(model, parts, has_intake=has_intake),
        catalogue=model.symbols,
        lines=line_samples(model, parts, has_intake=has_intake),
        abbreviations=[("Abbreviations", joined)] if joined else [],
    )


def notes_at(sentences: Sequence[str], at: Point, width_mm: float) -> tuple[list[Item], float]:
    """Return the notes from their top left corner, and the height they take in mm."""
    items = [text_item("notes:title", "Notes", at.moved(dy=TAG), TAG, bold=True)]
    y = at.y + TAG + 1.0
    for i, sentence in enumerate(sentences, start=1):
        for j, line in enumerate(wrap(f"{i}  {sentence}", width_mm, BODY)):
            y += line_pitch_mm(BODY)
            items.append(text_item(f"notes:{i}:{j}", line, Point(at.x, y)))
    return items, y + BODY / 3 - at.y


def side_items(
    model: Model, parts: Sequence[Part], *, has_intake: bool
) -> tuple[list[Item], float]:
    """Return notes and legend at their places, and how far down the sheet they reach in mm."""
    at = Point(AREA.x1 - SIDE_MM + SIDE_GAP_MM, AREA.y0)
    notes, height = notes_at(note_sentences(model, parts), at, AREA.x1 - at.x)
    under = at.moved(dy=height + SIDE_GAP_MM)
    legend = legend_at(model, parts, under, has_intake=has_intake)
    return [*notes, *legend.items], under.y + legend.height_mm


def side_holds(model: Model, parts: Sequence[Part], *, has_intake: bool) -> bool:
    """Tell whether notes and legend fit above the title block."""
    _, bottom = side_items(model, parts, has_intake=has_intake)
    return bottom <= title_block_box("A3").y0 - CLEAR_MM
