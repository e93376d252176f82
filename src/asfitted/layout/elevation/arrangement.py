"""The whole elevation sheet at a scale: the wall, then what stands beside and below it."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.elevation.notes import notes_of
from asfitted.layout.elevation.panels import KeyPanel, NotesPanel, Region, TablePanel, pack
from asfitted.layout.elevation.schedules import drop_table, run_table
from asfitted.layout.elevation.wall_drawing import BAND_MM, draw_wall, need_of
from asfitted.layout.frame import usable_box
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.panels import Panel
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_drawing import WallDrawing
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Numbers
    from asfitted.resolve.installation import Installation

USABLE = usable_box("A3")
CLEAR_OF_TITLE_MM = 3.0
VIEW_GAP_MM = 5.0
LEAST_COLUMN_MM = 60.0
WIDE_BAND_MM = 20.0  # more above the ceiling when callouts need margin rows
SMALL_MM, LOWERED, MOST_LOWERED_MM = 50.0, 0.4, 24.0
DROPS, RUNS = "drops", "run-contents"
SCHEDULES = "elevation/schedules"
ALWAYS = 2  # the first panels, key plan and notes, stand on every sheet


@dataclass(frozen=True)
class ElevationSheet:
    """A laid-out elevation: its items, and whether all found room that was to stand on it."""

    items: tuple[Item, ...]
    fits: bool  # key plan and notes found room
    tables_fit: bool  # and so did every table that was to stand here
    unplaced: tuple[str, ...]
    view: WallDrawing


def title_top() -> float:
    """Return y above which the title block is clear."""
    return title_block_box("A3").y0 - CLEAR_OF_TITLE_MM


def view_fits(content: WallContent, scale: int) -> bool:
    """Tell whether the wall with ladder, dimensions and title has room on the sheet."""
    need = need_of(content, scale)
    limit = title_top() if need.width > title_block_box("A3").x0 - USABLE.x0 else USABLE.y1
    return need.width <= USABLE.width and USABLE.y0 + need.height <= limit


def arrange(
    content: WallContent,
    installation: Installation,
    results: CalculationResults,
    numbers: Numbers,
    *,
    scale: int,
    tables_elsewhere: str = "",
) -> ElevationSheet:
    """Lay out one elevation sheet.

    Args:
        content: what the wall carries.
        installation: the job.
        results: computed routes and contents.
        numbers: sheet numbers for flags.
        scale: 25 for 1:25.
        tables_elsewhere: number of the sheet with the tables of all walls, "" for tables here.
    """
    drawn = _drawn(content, results, numbers, scale)
    notes = notes_of(content, results, numbers, drawn)
    tables = tables_of(content, results)
    if tables and tables_elsewhere:
        where = f"Schedules of {_listed(tables)}: sheet {tables_elsewhere}."
        notes = (notes[0], where, *notes[1:])
    panels: list[Panel] = [
        KeyPanel(installation, content.room, content.wall),
        NotesPanel(notes),
        *(() if tables_elsewhere else tables),
    ]
    packed = pack(panels, _regions(drawn.box))
    fits = all(index >= ALWAYS for index in packed.left_out)
    return ElevationSheet(
        (*drawn.items, *packed.items), fits, not packed.left_out, drawn.unplaced, drawn
    )


def _listed(tables: tuple[TablePanel, ...]) -> str:
    words = {DROPS: "drops", RUNS: "contents of runs"}
    return " and ".join(words[t.ident] for t in tables)


def _drawn(
    content: WallContent,
    results: CalculationResults,
    numbers: Numbers,
    scale: int,
) -> WallDrawing:
    """Draw the wall at the left, with margin rows above it where callouts lack room."""
    need = need_of(content, scale)
    slack = max(0.0, title_top() - USABLE.y0 - need.height)
    # a small view stands lower on the sheet; what is above it is room for callouts
    lowered = BAND_MM + min(max(0.0, slack - SMALL_MM) * LOWERED, MOST_LOWERED_MM)
    bands = sorted({lowered, min(BAND_MM + slack, WIDE_BAND_MM + lowered)})
    corner = Point(USABLE.x0, USABLE.y0)
    tries: list[WallDrawing] = []
    for compact, band in product((False, True), bands):
        drawn = draw_wall(
            content,
            results,
            numbers,
            scale=scale,
            corner=corner,
            band_mm=band,
            compact=compact,
        )
        if not drawn.unplaced:
            return drawn
        tries.append(drawn)
    return min(tries, key=lambda drawn: len(drawn.unplaced))


def tables_of(content: WallContent, results: CalculationResults) -> tuple[TablePanel, ...]:
    """Return the tables of a wall: its drops, and what lies in its runs."""
    made = []
    drops = drop_table(content)
    if drops is not None:
        made.append(TablePanel(DROPS, f"Drops on wall {content.wall.name}", drops))
    runs = run_table(content, results)
    if runs is not None:
        made.append(TablePanel(RUNS, f"What lies in the runs on wall {content.wall.name}", runs))
    return tuple(made)


def _regions(view: Box) -> list[Region]:
    """Return what the view leaves free: below it left of the title block, right of it, under it."""
    block = title_block_box("A3")
    top = view.y1 + VIEW_GAP_MM
    left_edge = block.x0 - CLEAR_OF_TITLE_MM - 2.0
    below = Box(USABLE.x0, top, left_edge, USABLE.y1)
    right = Box(view.x1 + VIEW_GAP_MM, USABLE.y0, USABLE.x1, title_top())
    has_column = right.width >= LEAST_COLUMN_MM
    end = min(view.x1, USABLE.x1) if has_column else USABLE.x1
    under = Box(left_edge + VIEW_GAP_MM, top, end, title_top())
    regions = [Region(below, beside=False), Region(under, beside=False)]
    if has_column:
        regions.append(Region(right, beside=True))
    return [r for r in regions if r.box.width >= LEAST_COLUMN_MM and r.box.height >= 12.0]
