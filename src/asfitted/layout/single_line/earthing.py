"""Earthing beside the intake: main earthing terminal, earthing conductor, bonds, electrode.

The terminal is an upright bar. The means of earthing and the bonds leave it to the left, each with
its sign and size; the main protective conductor leaves it to the right, down to the first board.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout import given_words as given
from asfitted.layout.lettering import BODY, TAG
from asfitted.layout.linework import polyline
from asfitted.layout.sheet_layout import Item
from asfitted.layout.single_line import ink
from asfitted.layout.single_line.earth_rows import (
    BAR_TOP,
    BAR_X,
    LABEL_MM,
    PROTECTIVE_X,
    SIGN_X,
    SMALL_SIGN,
    SUPPLY_Y,
    TERMINAL_WORDS,
    EarthRow,
    bar_foot_mm,
    earth_rows,
    earthing_words,
    first_row_mm,
    size_words,
)
from asfitted.layout.single_line.phrases import set_phrases, width_mm
from asfitted.layout.single_line.room import PITCH, SIGN

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Supply


def earthing_items(supply: Supply, at: Point, model: Model) -> list[Item]:
    """Return the earthing beside the incoming line, whose top is ``at``."""
    x, foot = at.x + BAR_X, at.y + bar_foot_mm(supply)
    bar = polyline((x, at.y + BAR_TOP), (x, foot), width_mm=ink.WIDTHS.extra_wide)
    items = [Item("met", "busbar", (bar,), net="PE", title=TERMINAL_WORDS)]
    items += _supply_earth(supply, at)
    y = at.y + first_row_mm(supply)
    for row in earth_rows(supply):
        items += _row_items(row, Point(x, y + row.height_mm / 2), model)
        y += row.height_mm
    if not supply.bonds:
        words = set_phrases(["main bonds", given.NOT_RECORDED], LABEL_MM, BODY, join=" ")
        left = x + SIGN_X - SMALL_SIGN / 2 - 2.0 - LABEL_MM
        items += ink.words("met:no-bonds", words, Point(left, max(y, at.y + SIGN + 4.0)))
    return items + _met_words(supply, Point(x, foot))


def _supply_earth(supply: Supply, at: Point) -> list[Item]:
    """Return the earthing conductor to the supply's own earth; none where there is an electrode."""
    if supply.system == "TT":
        return []
    x, y = at.x + BAR_X, at.y + SUPPLY_Y
    size = size_words(supply.earthing_conductor_mm2)
    return [
        ink.protective("earthing-conductor", (at.x - 0.8, y), (x, y), title=earthing_words(supply)),
        *ink.words("earthing-conductor:words", ["earthing conductor"], Point(x + 3.0, y - 4.0)),
        *ink.words("earthing-conductor:size", [size], Point(x + 3.0, y + 1.2)),
    ]


def _row_items(row: EarthRow, at: Point, model: Model) -> list[Item]:
    """Return one conductor to the left of the bar with its sign and words."""
    centre = at.moved(dx=SIGN_X)
    right = centre.x - SMALL_SIGN / 2 - 2.0
    widest = max(width_mm(line, BODY) for line in row.lines)
    top = at.y - len(row.lines) * PITCH / 2 + 0.5
    return [
        ink.sign(f"met:{row.ident}", model, row.sign, centre, turn=90, size_mm=SMALL_SIGN),
        ink.protective(
            f"met:{row.ident}:conductor",
            (at.x, at.y),
            (centre.x + SMALL_SIGN / 2, at.y),
            title=" ".join(row.lines),
        ),
        *ink.words(f"met:{row.ident}:words", row.lines, Point(right - widest, top)),
    ]


def _met_words(supply: Supply, foot: Point) -> list[Item]:
    """Return the name of the bar and the size of what goes on to the first board."""
    items = ink.tags("met:tag", ["MET"], Point(foot.x + 3.0, foot.y - 3 * PITCH - TAG - 6.2))
    words = ["main protective conductor", size_words(supply.main_protective_mm2)]
    lines = set_phrases(words, -BAR_X + PROTECTIVE_X - 5.0, BODY, join=" ")
    at = Point(foot.x + 3.0, foot.y - 3.0 - len(lines) * PITCH - 0.6)
    return items + ink.words("main-protective:words", lines, at)


def main_protective(supply: Supply, at: Point, *rest: tuple[float, float]) -> Item:
    """Return the main protective conductor from the bar to the last of some points."""
    y = at.y + bar_foot_mm(supply) - 2.0
    title = f"main protective conductor {size_words(supply.main_protective_mm2)}"
    return ink.protective("main-protective", (at.x + BAR_X, y), (rest[0][0], y), *rest, title=title)
