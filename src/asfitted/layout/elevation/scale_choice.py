"""One scale for every wall of the set: the largest at which each fits its sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.elevation.arrangement import SCHEDULES, arrange, tables_of, view_fits
from asfitted.layout.sheet_model import Numbers

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.panels import TablePanel
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.resolve.installation import Installation

SCALES = (20, 25, 50, 75, 100, 200)


def stand_in_numbers(installation: Installation) -> Numbers:
    """Return numbers as wide as the real ones, for trying a layout before sheets are numbered."""
    keys = [f"elevation/{name}" for name in installation.walls]
    return Numbers(dict.fromkeys([*keys, "key-plan", SCHEDULES], "00"))


def choose_scale(
    contents: Sequence[WallContent], installation: Installation, results: CalculationResults
) -> int:
    """Return the largest scale at which every wall, its key plan and its notes fit their sheet."""
    numbers = stand_in_numbers(installation)
    for scale in SCALES[:-1]:
        if not all(view_fits(content, scale) for content in contents):
            continue
        sheets = (
            arrange(c, installation, results, numbers, scale=scale, tables_elsewhere="00")
            for c in contents
        )
        if all(sheet.fits for sheet in sheets):
            return scale
    return SCALES[-1]


def tables_of_their_own(
    contents: Sequence[WallContent],
    installation: Installation,
    results: CalculationResults,
    scale: int,
) -> tuple[TablePanel, ...]:
    """Return the tables of all walls where one of them lacks room beside its view, else none.

    They go all together, so that the reader looks in one place.
    """
    numbers = stand_in_numbers(installation)
    sheets = (arrange(c, installation, results, numbers, scale=scale) for c in contents)
    if all(sheet.tables_fit for sheet in sheets):
        return ()
    return tuple(table for content in contents for table in tables_of(content, results))
