"""All elevations of a job: one scale by geometry, and what stands on their schedules sheet."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.elevation.arrangement import (
    SCHEDULES,
    arrange,
    draw_on_sheet,
    tables_of,
    view_fits,
)
from asfitted.layout.elevation.notes import general_notes
from asfitted.layout.elevation.panels import TablePanel
from asfitted.layout.elevation.run_drawing import is_widened
from asfitted.layout.elevation.schedules import keynote_table
from asfitted.layout.elevation.wall_view import WallView
from asfitted.layout.sheet_model import Numbers

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_drawing import WallDrawing
    from asfitted.resolve.installation import Installation

SCALES = (20, 25, 50, 75, 100, 200)
MOST_KEYNOTES = 8  # on one wall, before a smaller scale is tried


@dataclass(frozen=True)
class ElevationSet:
    """What is common to all elevations of a job.

    ``bands_mm`` is the room above the ceiling of each wall. ``has_schedules`` tells that notes and
    tables of all walls stand on sheets of their own; ``moved`` names the walls whose keynotes or
    own notes stand there too.
    """

    contents: tuple[WallContent, ...]
    scale: int
    bands_mm: tuple[float, ...]
    has_schedules: bool
    moved: tuple[str, ...]

    def drawn(
        self, content: WallContent, results: CalculationResults, numbers: Numbers
    ) -> WallDrawing:
        """Draw one of the walls as it was planned."""
        band = self.bands_mm[self.contents.index(content)]
        return draw_on_sheet(content, results, numbers, self.scale, band)


def plan_set(
    contents: tuple[WallContent, ...], installation: Installation, results: CalculationResults
) -> ElevationSet:
    """Choose the scale of all walls, and whether notes and tables need sheets of their own.

    They go all together, so that the reader looks in one place.
    """
    numbers = stand_in_numbers(installation)
    scale, drawn = _choose_scale(contents, results, numbers)
    pairs = list(zip(contents, drawn, strict=True))
    bands = tuple(d.band_mm for d in drawn)
    here = (arrange(c, d, installation, results, numbers) for c, d in pairs)
    if all(sheet.all_here for sheet in here):
        return ElevationSet(contents, scale, bands, has_schedules=False, moved=())
    moved = tuple(
        c.wall.name
        for c, d in pairs
        if not arrange(c, d, installation, results, numbers, schedules="00").all_here
    )
    return ElevationSet(contents, scale, bands, has_schedules=True, moved=moved)


def stand_in_numbers(installation: Installation) -> Numbers:
    """Return numbers as wide as the real ones, for trying a layout before sheets are numbered."""
    keys = [f"elevation/{name}" for name in installation.walls]
    return Numbers(dict.fromkeys([*keys, "key-plan", SCHEDULES], "00"))


def _choose_scale(
    contents: Sequence[WallContent], results: CalculationResults, numbers: Numbers
) -> tuple[int, list[WallDrawing]]:
    """Return the largest scale at which every wall has room on its sheet, with the drawn walls.

    Words never decide it, unless they leave more keynotes than a reader would follow.
    """
    fitting = [s for s in SCALES if all(view_fits(c, s) for c in contents)] or [SCALES[-1]]
    first: tuple[int, list[WallDrawing]] | None = None
    for scale in fitting:
        drawn = [draw_on_sheet(c, results, numbers, scale) for c in contents]
        first = first or (scale, drawn)
        if all(len(d.left_over.keynotes) <= MOST_KEYNOTES for d in drawn):
            return scale, drawn
    return first or (SCALES[-1], [])


def schedule_words(
    walls: ElevationSet, installation: Installation, results: CalculationResults, numbers: Numbers
) -> tuple[tuple[str, ...], tuple[TablePanel, ...]]:
    """Return notes and tables for the schedules sheet: those of all walls, then moved ones."""
    widened = any(
        is_widened(WallView(c.wall, walls.scale, 0.0, 0.0), piece)
        for c in walls.contents
        for piece in c.pieces
    )
    notes = list(general_notes(walls.contents, widened=widened))
    tables: list[TablePanel] = []
    for content in walls.contents:
        name = content.wall.name
        if name in walls.moved:
            drawn = walls.drawn(content, results, numbers)
            sheet = arrange(content, drawn, installation, results, numbers, schedules="00")
            notes += [f"Wall {name}: {note}" for note in sheet.moved_notes]
            if sheet.moved_keynotes:
                table = keynote_table(sheet.moved_keynotes)
                tables.append(TablePanel(f"keynotes:{name}", f"Keynotes on wall {name}", table))
        tables += tables_of(content, results)
    return tuple(notes), tuple(tables)
