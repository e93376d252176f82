"""The texts of a sheet, and the subset of the lettering font that they need."""

from __future__ import annotations

import io
from functools import cache
from typing import TYPE_CHECKING

from fontTools import subset
from fontTools.ttLib import TTFont

from asfitted.draw.placed_symbol import symbol_texts
from asfitted.fonts import FAMILY, FILES, text_width_mm
from asfitted.layout.sheet_layout import SymbolUse, Text

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Primitive, SheetLayout

#: Names tried in turn by a viewer that does not take the embedded font.
FAMILIES = f"'{FAMILY}', 'DejaVu Sans', Verdana, Arial, sans-serif"

#: Characters that drawings use again and again.
USUAL = "".join(map(chr, range(0x20, 0x7F))) + "°²³·×Ω≤≥±–—…‘’“”•→←↑↓½†☐✓"


def texts_of(part: Primitive) -> tuple[Text, ...]:
    """Return the texts that a primitive sets: itself, or the letters of a symbol."""
    if isinstance(part, Text):
        return (part,)
    return symbol_texts(part) if isinstance(part, SymbolUse) else ()


def sheet_texts(sheet: SheetLayout) -> tuple[Text, ...]:
    """Return every text of a sheet in drawing order.

    Raises:
        MissingGlyphError: the lettering font has no sign for a character.
    """
    texts = tuple(t for item in sheet.items for part in item.parts for t in texts_of(part))
    for text in texts:
        text_width_mm(text.text, text.cap_mm, bold=text.bold)  # raises where a sign is missing
    return texts


def characters_used(texts: tuple[Text, ...], *, bold: bool) -> str:
    """Return the characters set in the regular or bold cut, each once, sorted."""
    return "".join(sorted({char for text in texts if text.bold == bold for char in text.text}))


def characters_to_embed(texts: tuple[Text, ...], *, bold: bool) -> str:
    """Return the characters of a cut that a sheet carries: what it sets, and all usual ones.

    Almost every sheet then carries the same set, which is cut once: cutting takes longer than
    drawing. A cut that the sheet does not use is not carried.
    """
    used = characters_used(texts, bold=bold)
    return "".join(sorted({*used, *USUAL})) if used else ""


@cache
def font_subset(characters: str, *, bold: bool) -> bytes:
    """Return a TrueType file with only these characters; the same bytes for the same characters.

    Kerning is left out: layout measures plain advances, and a viewer must set the same ones.
    """
    options = subset.Options()
    options.hinting = False
    options.notdef_outline = True
    options.name_IDs = [0, 1, 2, 4, 6, 13]
    options.recalc_timestamp = False
    options.drop_tables = [*options.drop_tables, "FFTM", "GDEF", "GPOS", "GSUB", "kern"]
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=sorted({ord(char) for char in characters} | {0x20}))
    out = io.BytesIO()
    with TTFont(FILES[bold], recalcTimestamp=False) as font:
        subsetter.subset(font)
        font.save(out)
    return out.getvalue()
