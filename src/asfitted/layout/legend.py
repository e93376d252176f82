"""The legend: every symbol, line and abbreviation of the sheet it stands on, and nothing else."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, lines_of_text, text_item, wrap
from asfitted.layout.linework import polyline
from asfitted.layout.sheet_layout import Item, Pattern, SymbolUse, Tone

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from asfitted.layout.sheet_layout import SymbolInfo

GROUP_ORDER = ("supply", "protection", "wiring", "accessories", "data", "containment", "marks")
FOOTNOTE = "† not a standard symbol: a sign of our own, explained here"


@dataclass(frozen=True)
class LineSample:
    """One kind of line used on the sheet, with what it means."""

    words: str
    width_mm: float
    pattern: Pattern = "continuous"
    tone: Tone = "black"
    double: bool = False  # two edges, as for containment


@dataclass(frozen=True)
class Legend:
    """A laid-out legend: items placed in a box, and the height they took."""

    items: tuple[Item, ...]
    height_mm: float


def used_symbols(items: Iterable[Item]) -> tuple[str, ...]:
    """Return the names of the symbols used by some items, sorted."""
    return tuple(sorted({p.name for item in items for p in item.parts if isinstance(p, SymbolUse)}))


def lay_out_legend(
    *,
    at: Point,
    width_mm: float,
    columns: int,
    symbols: Sequence[str],
    catalogue: Mapping[str, SymbolInfo],
    lines: Sequence[LineSample] = (),
    abbreviations: Sequence[tuple[str, str]] = (),
    size_mm: float = 10.0,
    sizes_mm: Mapping[str, float] | None = None,
    width_of_symbol_lines_mm: float = 0.35,
) -> Legend:
    """Lay out a legend from its top left corner downwards.

    Args:
        at: top left corner, mm.
        width_mm: whole width, mm.
        columns: how many entries stand side by side.
        symbols: names of the symbols used on the sheet.
        catalogue: what the symbols are called.
        lines: line kinds used on the sheet.
        abbreviations: (short, words) used on the sheet.
        size_mm: symbols are shown at this size, the same as on the sheet; the greatest of them.
        sizes_mm: sizes of those that are shown smaller, by name.
        width_of_symbol_lines_mm: stroke of the symbols, mm.

    Returns:
        The items and the height taken in mm.
    """
    column_mm = width_mm / columns
    items = [text_item("legend:title", "Legend", at.moved(dy=TAG), TAG, bold=True)]
    tops = [at.y + TAG + 3.0] * columns
    order = sorted(symbols, key=lambda n: (GROUP_ORDER.index(catalogue[n].group), n))
    text_x = size_mm + 3.0
    for name in order:
        info = catalogue[name]
        words = info.legend + ("" if info.standard else " †")
        column = tops.index(min(tops))
        lines_ = wrap(words, column_mm - text_x - 2.0, BODY)
        height = max(size_mm, len(lines_) * line_pitch_mm(BODY)) + 2.0
        x, y = at.x + column * column_mm, tops[column]
        size = (sizes_mm or {}).get(name, size_mm)
        corner = Point(x, y).moved((size_mm - size) / 2, (size_mm - size) / 2)
        use = SymbolUse(name, corner, size, width_mm=width_of_symbol_lines_mm)
        items.append(Item(f"legend:{name}", "symbol", (use,), title=info.legend))
        first = y + size_mm / 2 + BODY / 2 - (len(lines_) - 1) * line_pitch_mm(BODY) / 2
        first = max(first, y + BODY)
        items.append(
            Item(f"legend:{name}:words", "text", lines_of_text(lines_, Point(x + text_x, first)))
        )
        tops[column] = y + height
    for i, sample in enumerate(lines):
        column = tops.index(min(tops))
        x, y = at.x + column * column_mm, tops[column]
        made, height = _line_entry(f"legend:line:{i}", sample, Point(x, y), column_mm)
        items.extend(made)
        tops[column] = y + height
    bottom = max(tops)
    for short, words in abbreviations:
        for line in wrap(f"{short}: {words}", width_mm, BODY):
            bottom += line_pitch_mm(BODY)
            items.append(text_item(f"legend:abbr:{short}:{line[:8]}", line, Point(at.x, bottom)))
    if any(not catalogue[n].standard for n in symbols):
        for i, line in enumerate(wrap(FOOTNOTE, width_mm, BODY)):
            bottom += line_pitch_mm(BODY)
            items.append(text_item(f"legend:footnote:{i}", line, Point(at.x, bottom)))
    return Legend(tuple(items), bottom - at.y + 1.5)


def _line_entry(
    ident: str, sample: LineSample, at: Point, column_mm: float
) -> tuple[list[Item], float]:
    """Return one line sample with its words, and the height taken."""
    length = 16.0
    lines = wrap(sample.words, column_mm - length - 5.0, BODY)
    height = max(5.0, len(lines) * line_pitch_mm(BODY) + 1.0)
    y = at.y + 2.2
    offsets = (-1.0, 1.0) if sample.double else (0.0,)
    strokes = tuple(
        polyline(
            (at.x, y + d),
            (at.x + length, y + d),
            width_mm=sample.width_mm,
            pattern=sample.pattern,
            tone=sample.tone,
        )
        for d in offsets
    )
    words = lines_of_text(lines, Point(at.x + length + 3.0, y + BODY / 2))
    return [Item(ident, "outline", strokes), Item(f"{ident}:words", "text", words)], height


def legend_box(legend: Legend, at: Point, width_mm: float) -> Box:
    """Return the box that a legend occupies."""
    return Box(at.x, at.y, at.x + width_mm, at.y + legend.height_mm)
