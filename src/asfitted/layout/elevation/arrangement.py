"""The whole elevation sheet at a scale: the wall, then what stands beside and below it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.elevation.notes import notes_of
from asfitted.layout.elevation.panels import KeyPanel, NotesPanel, TablePanel, pack
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
WIDE_BAND_MM = 30.0  # above the ceiling when callouts need margin rows
DROPS, RUNS = "drops", "run-contents"


@dataclass(frozen=True)
class ElevationSheet:
    """A laid-out elevation: its items, and the tables that found no room on it."""

    items: tuple[Item, ...]
    tables_left_out: tuple[TablePanel, ...]
    fits: bool  # key plan and notes found room
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
        tables_elsewhere: number of the sheet that holds the tables of all walls, or "".
    """
    drawn = _drawn(content, results, numbers, scale)
    notes = list(
        notes_of(content, results, numbers, widened=drawn.widened, unplaced=drawn.unplaced)
    )
    tables = _tables(content, results)
    if tables and tables_elsewhere:
        notes.insert(1, f"Schedules of drops and of what lies in runs: sheet {tables_elsewhere}.")
    panels: list[Panel] = [
        KeyPanel(installation, content.room, content.wall),
        NotesPanel(tuple(notes)),
    ]
    if not tables_elsewhere:
        panels = [*tables, *panels]
    packed = pack(panels, _regions(drawn.box))
    left = tuple(
        panel
        for i in packed.left_out
        if isinstance(panel := panels[i], TablePanel)
    )
    fits = len(left) == len(packed.left_out)
    return ElevationSheet((*drawn.items, *packed.items), left, fits, drawn.unplaced, drawn)


def _drawn(
    content: WallContent,
    results: CalculationResults,
    numbers: Numbers,
    scale: int,
) -> WallDrawing:
    """Draw the wall at the top left; with margin rows above it where callouts lack room."""
    corner = Point(USABLE.x0, USABLE.y0)
    drawn = draw_wall(
        content, results, numbers, scale=scale, corner=corner, band_mm=BAND_MM
    )
    if not drawn.unplaced:
        return drawn
    need = need_of(content, scale, WIDE_BAND_MM)
    if USABLE.y0 + need.height > title_top():
        return drawn
    wider = draw_wall(
        content, results, numbers, scale=scale, corner=corner, band_mm=WIDE_BAND_MM
    )
    return wider if len(wider.unplaced) < len(drawn.unplaced) else drawn


def _tables(content: WallContent, results: CalculationResults) -> list[TablePanel]:
    made = []
    drops = drop_table(content)
    if drops is not None:
        made.append(TablePanel(DROPS, f"Drops on wall {content.wall.name}", drops))
    runs = run_table(content, results)
    if runs is not None:
        made.append(TablePanel(RUNS, f"What lies in the runs on wall {content.wall.name}", runs))
    return made


def tables_of(content: WallContent, results: CalculationResults) -> tuple[TablePanel, ...]:
    """Return the tables of a wall, for the sheet that holds those of all walls."""
    return tuple(_tables(content, results))


def _regions(view: Box) -> list[Box]:
    """Return what the view leaves free: right of it, below it left of the title block, above."""
    block = title_block_box("A3")
    right = Box(view.x1 + VIEW_GAP_MM, USABLE.y0, USABLE.x1, title_top())
    top = view.y1 + VIEW_GAP_MM
    left_edge = block.x0 - CLEAR_OF_TITLE_MM - 2.0
    regions = [Box(USABLE.x0, top, left_edge, USABLE.y1)]
    if right.width >= 60.0:
        regions.append(right)
        under = Box(left_edge + VIEW_GAP_MM, top, min(view.x1, USABLE.x1), title_top())
    else:
        under = Box(left_edge + VIEW_GAP_MM, top, USABLE.x1, title_top())
    if under.width >= 60.0 and under.height >= 15.0:
        regions.append(under)
    return [r for r in regions if r.width >= 40.0 and r.height >= 12.0]
