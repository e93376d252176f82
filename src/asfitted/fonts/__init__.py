"""The one lettering family of every sheet, and its advances, read from the shipped font files.

The family is open-licensed (see LICENCE.txt), static, has digits of equal width and every sign the
trade needs. Text is measured here before it is placed; fonts of the machine are never asked.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path

from fontTools.ttLib import TTFont

from asfitted.errors import MissingGlyphError

FAMILY = "DejaVu Sans Condensed"
FOLDER = Path(__file__).parent
FILES = {False: FOLDER / "DejaVuSansCondensed.ttf", True: FOLDER / "DejaVuSansCondensed-Bold.ttf"}
#: Room is reserved for the uncondensed cut of the family, which is 1/0.9 as wide, so that a viewer
#: which substitutes a font of ordinary width still shows no text over another.
RESERVE = 1 / 0.9


@dataclass(frozen=True)
class FontMetrics:
    """Advances (em) by character, and the heights (em) that layout needs."""

    advances: dict[str, float]
    cap_height: float
    descent: float


@cache
def metrics(*, bold: bool = False) -> FontMetrics:
    """Return the metrics of the regular or bold cut.

    Raises:
        OSError: the shipped font file is missing.
    """
    with TTFont(FILES[bold], lazy=True) as font:
        em = font["head"].unitsPerEm
        widths = font["hmtx"].metrics
        advances = {chr(code): widths[name][0] / em for code, name in font.getBestCmap().items()}
        cap = font["glyf"]["H"].yMax / em  # this family predates the cap-height field of OS/2
        return FontMetrics(advances, cap, abs(font["hhea"].descent) / em)


def font_size_mm(cap_mm: float) -> float:
    """Return the em size (mm) whose capitals are ``cap_mm`` mm high."""
    return cap_mm / metrics().cap_height


def text_width_mm(text: str, cap_mm: float, *, bold: bool = False) -> float:
    """Return the room (mm) to reserve for one line of text with capitals ``cap_mm`` mm high.

    Raises:
        MissingGlyphError: the family has no sign for a character.
    """
    return _ems(text, bold=bold) * font_size_mm(cap_mm) * RESERVE


@lru_cache(maxsize=100_000)
def _ems(text: str, *, bold: bool) -> float:
    """Return the length of a text in ems; layout asks for the same words many times."""
    advances = metrics(bold=bold).advances
    try:
        return sum(advances[char] for char in text)
    except KeyError as error:
        char = error.args[0]
        raise MissingGlyphError(
            f"the lettering font has no sign for {char!r} (U+{ord(char):04X}) in {text!r}"
        ) from error
