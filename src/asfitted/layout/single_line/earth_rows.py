"""What leaves the main earthing terminal: electrode and bonds, and the room they need."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout import given_words as given
from asfitted.layout.lettering import BODY
from asfitted.layout.single_line.label import SWITCH_X
from asfitted.layout.single_line.phrases import set_phrases
from asfitted.layout.single_line.room import PITCH

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Supply

SMALL_SIGN = 7.0  # earth signs beside the intake
BAR_X = -50.0  # the incoming line to the bar of the main earthing terminal
BAR_TOP = 3.0
SIGN_X = -9.0  # the bar to the middle of an earth sign
LABEL_MM = SWITCH_X + BAR_X + SIGN_X - SMALL_SIGN / 2 - 2.0  # room for the words of a bond
ROW_MM = 8.0
SUPPLY_Y = 5.0  # top of the incoming line to where the supply's earth joins it
PROTECTIVE_X = -9.0  # the incoming line to the main protective conductor beside it
TERMINAL_WORDS = "main earthing terminal"
INTAKE_MM = 41.0  # supply, cut-out, meter and tails


@dataclass(frozen=True)
class EarthRow:
    """One conductor that leaves the bar to the left."""

    ident: str
    sign: str
    lines: tuple[str, ...]

    @property
    def height_mm(self) -> float:
        """Height of the row, mm."""
        return max(ROW_MM, len(self.lines) * PITCH + 1.2)


def earth_rows(supply: Supply) -> list[EarthRow]:
    """Return electrode and bonds from the top down."""
    rows = []
    if supply.system == "TT":
        earth = given.known(supply.electrode_ohm, "Ω")
        size = size_words(supply.earthing_conductor_mm2)
        words = ["earth electrode", earth, "earthing conductor", size]
        rows.append(EarthRow("electrode", "earth_electrode", _set(words)))
    for what, mm2 in supply.bonds:
        rows.append(EarthRow(f"bond:{what}", "protective_earth", _set([what, f"{mm2:g} mm²"])))
    return rows


def _set(words: list[str]) -> tuple[str, ...]:
    return tuple(set_phrases(words, LABEL_MM, BODY, join=" "))


def earthing_words(supply: Supply) -> str:
    """Return the earthing conductor in words, with its size."""
    return f"earthing conductor {size_words(supply.earthing_conductor_mm2)}"


def size_words(mm2: float | None) -> str:
    """Return a cross-section in words."""
    return given.NOT_RECORDED if mm2 is None else f"{mm2:g} mm²"


def first_row_mm(supply: Supply) -> float:
    """Return where the first row starts: under the line to the supply where there is one, mm."""
    return BAR_TOP + (0.0 if supply.system == "TT" else 5.0)


def bar_foot_mm(supply: Supply) -> float:
    """Return how far down the bar of the main earthing terminal reaches, mm."""
    rows = sum(row.height_mm for row in earth_rows(supply))
    return max(first_row_mm(supply) + rows, 34.0)


def intake_height_mm(model: Model) -> float:
    """Return the height of intake and earthing over the first board, mm."""
    supply = model.installation.supply
    return INTAKE_MM if supply is None else max(INTAKE_MM, bar_foot_mm(supply) + 5.0)
