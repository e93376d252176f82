"""The whole elevation sheet at a scale: the wall, then what stands beside and below it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.elevation.notes import HEIGHTS, SCAN, general_notes, wall_notes
from asfitted.layout.elevation.panels import (
    KeyPanel,
    NotesPanel,
    PackedPanels,
    Region,
    TablePanel,
    pack,
)
from asfitted.layout.elevation.schedules import drop_table, run_table
from asfitted.layout.elevation.wall_drawing import BAND_MM, draw_wall, need_of
from asfitted.layout.frame import usable_box
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_drawing import WallDrawing
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Numbers
    from asfitted.resolve.installation import Installation

USABLE = usable_box("A3")
CLEAR_OF_TITLE_MM = 3.0
VIEW_GAP_MM = 5.0
LEAST_COLUMN_MM = 60.0
LABEL_ROWS_MM = 20.0  # two rows of labels above the ceiling
ROWS_COST = 80.0  # of leaders and missing words that label rows must save
SMALL_MM, LOWERED, MOST_LOWERED_MM = 50.0, 0.4, 24.0
DROPS, RUNS = "drops", "run-contents"
SCHEDULES = "elevation/schedules"


@dataclass(frozen=True)
class ElevationSheet:
    """A laid-out elevation: its items, and what of its words has to stand on the schedules."""

    items: tuple[Item, ...]
    all_here: bool  # key plan, notes, keynotes and tables all found room
    moved_keynotes: tuple[str, ...]
    moved_notes: tuple[str, ...]


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
    drawn: WallDrawing,
    installation: Installation,
    results: CalculationResults,
    numbers: Numbers,
    *,
    schedules: str = "",
) -> ElevationSheet:
    """Lay out what stands beside and below a drawn wall.

    Args:
        content: what the wall carries.
        drawn: the wall on the sheet.
        installation: the job.
        results: computed routes and contents.
        numbers: sheet numbers for flags.
        schedules: number of the sheet with notes and tables of all walls, "" for all of it here.
    """
    key = KeyPanel(installation, content.room, content.wall)
    own = wall_notes(content, results, numbers, drawn.left_over)
    words = drawn.left_over.keynotes
    keynotes = (NotesPanel(words, "Keynotes", "keynote"),) if words else ()
    regions = _regions(drawn.box)
    if not schedules:
        notes = NotesPanel((*general_notes([content], widened=drawn.widened), *own))
        packed = pack([*keynotes, notes, key, *tables_of(content, results)], regions)
        return ElevationSheet((*drawn.items, *packed.items), not packed.left_out, (), ())
    packed, has_own, has_keynotes = _fullest(schedules, own, keynotes, key, regions)
    left = () if has_keynotes else words
    moved = () if has_own else own
    return ElevationSheet((*drawn.items, *packed.items), not (moved or left), left, moved)


def _fullest(
    schedules: str,
    own: tuple[str, ...],
    keynotes: tuple[NotesPanel, ...],
    key: KeyPanel,
    regions: Sequence[Region],
) -> tuple[PackedPanels, bool, bool]:
    """Pack as much as there is room for, where notes and tables of all walls stand elsewhere.

    The key plan goes before the keynotes do, and those go before the two notes that always stay.

    Returns:
        What was packed, and whether the notes of the wall and its keynotes are among it.
    """
    least = (SCAN, f"Notes and schedules: sheet {schedules}.")
    choices: list[tuple[tuple[str, ...], tuple[NotesPanel, ...], tuple[KeyPanel, ...]]] = [
        *((n, keynotes, k) for k in ((key,), ()) for n in ((HEIGHTS, *own), own)),
        *(((), here, k) for here in (keynotes, ()) for k in ((key,), ())),
    ]
    for notes, here, extra in choices:
        packed = pack([NotesPanel((*least, *notes)), *here, *extra], regions)
        if not packed.left_out:
            break
    return packed, not own or own[0] in notes, not keynotes or bool(here)


def draw_on_sheet(
    content: WallContent,
    results: CalculationResults,
    numbers: Numbers,
    scale: int,
    band_mm: float | None = None,
) -> WallDrawing:
    """Draw the wall at the left, with rows for labels above it where its words need them.

    ``band_mm`` is the room above the ceiling where that is known from an earlier drawing.
    """
    need = need_of(content, scale)
    slack = max(0.0, title_top() - USABLE.y0 - need.height)
    # a small view stands lower on the sheet; what is above it is room for callouts
    lowered = BAND_MM + min(max(0.0, slack - SMALL_MM) * LOWERED, MOST_LOWERED_MM)
    bands = sorted({lowered, min(BAND_MM + slack, LABEL_ROWS_MM + lowered)})
    corner = Point(USABLE.x0, USABLE.y0)
    if band_mm is not None:
        bands = [band_mm]
    best: WallDrawing | None = None
    for band in bands:
        if best is not None and best.cost <= ROWS_COST:
            break
        drawn = draw_wall(content, results, numbers, scale=scale, corner=corner, band_mm=band)
        if best is None or drawn.cost + ROWS_COST < best.cost:
            best = drawn
    assert best is not None  # noqa: S101  # there is at least one band
    return best


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
