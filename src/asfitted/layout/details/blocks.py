"""What stands beside the figures of a detail sheet: tables, notes and the legend, at any width."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Protocol

from asfitted.errors import DoesNotFitError
from asfitted.fonts import text_width_mm
from asfitted.geometry import Point
from asfitted.layout.legend import lay_out_legend
from asfitted.layout.lettering import (
    BODY,
    TAG,
    line_pitch_mm,
    lines_of_text,
    text_item,
    wrap,
)
from asfitted.layout.linework import widths_for
from asfitted.layout.sheet_layout import Item
from asfitted.layout.table import fit_table, table_items

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.layout.details.subject import Notes
    from asfitted.layout.legend import Legend, LineSample
    from asfitted.layout.sheet_layout import Paper, SymbolInfo
    from asfitted.layout.table import FittedTable, Table

HEAD_MM = TAG + 2.5
LEAST_MM = 50.0
LEGEND_COLUMN_MM = 62.0
NOTE_COLUMN_MM = 92.0
COLUMN_GAP_MM = 4.0
NEVER = float("inf")


class Block(Protocol):
    """Something that needs a height for a width, and can then be placed."""

    def height_mm(self, width_mm: float) -> float:
        """Return the height at a width, infinite where it is too narrow."""

    def place(self, at: Point, width_mm: float) -> tuple[Item, ...]:
        """Return the items, from the top left corner."""


@dataclass(frozen=True)
class TableBlock:
    """A ruled table under its heading."""

    key: str
    title: str
    table: Table
    _known: dict[float, FittedTable | None] = field(default_factory=dict, compare=False)

    def _fitted(self, width_mm: float) -> FittedTable | None:
        if width_mm not in self._known:
            self._known[width_mm] = _fitted(self.table, width_mm)
        return self._known[width_mm]

    def height_mm(self, width_mm: float) -> float:
        """Return the height of heading, header and rows."""
        fitted = self._fitted(width_mm)
        if fitted is None or text_width_mm(self.title, TAG, bold=True) > width_mm:
            return NEVER
        return HEAD_MM + fitted.header_mm + sum(fitted.row_mm)

    def place(self, at: Point, width_mm: float) -> tuple[Item, ...]:
        """Return heading and table; rows are named by their tag, which no other table has."""
        fitted = self._fitted(width_mm)
        if fitted is None:
            raise DoesNotFitError(f"{self.title}: the words of the table are too wide")
        rows = range(len(self.table.rows))
        made, _ = table_items("details:table", fitted, rows, at.moved(dy=HEAD_MM))
        own = (f"details:{self.key}:{i.ident.rpartition(':')[2]}" for i in made[:2])
        named = (replace(item, ident=ident) for item, ident in zip(made[:2], own, strict=True))
        return (_heading(f"details:{self.key}:title", self.title, at), *named, *made[2:])


@dataclass(frozen=True)
class NotesBlock:
    """Notes, each begun with its subject, in as many columns as the width allows."""

    key: str
    title: str
    notes: Notes

    def _columns(self, width_mm: float) -> list[list[tuple[str, list[str]]]]:
        count = max(1, int(width_mm // NOTE_COLUMN_MM))
        each = width_mm / count - (COLUMN_GAP_MM if count > 1 else 0.0)
        wrapped = [(label, wrap(f"{label}: {words}", each, BODY)) for label, words in self.notes]
        made: list[list[tuple[str, list[str]]]] = [[] for _ in range(count)]
        share = sum(len(lines) for _, lines in wrapped) / count
        taken = 0.0
        for label, lines in wrapped:
            made[min(count - 1, int((taken + len(lines) / 2) / share))].append((label, lines))
            taken += len(lines)
        return [column for column in made if column]

    def height_mm(self, width_mm: float) -> float:
        """Return the height of the heading and the longest column."""
        if text_width_mm(self.title, TAG, bold=True) > width_mm:
            return NEVER
        deepest = max(sum(_note_mm(lines) for _, lines in c) for c in self._columns(width_mm))
        return HEAD_MM + deepest + 1.0

    def place(self, at: Point, width_mm: float) -> tuple[Item, ...]:
        """Return heading and notes."""
        items = [_heading(f"details:notes:{self.key}:title", self.title, at)]
        made = self._columns(width_mm)
        for i, column in enumerate(made):
            spot = at.moved(i * width_mm / len(made), HEAD_MM + BODY)
            for label, lines in column:
                words = lines_of_text(lines, spot)
                items.append(Item(f"details:note:{self.key}:{label}", "text", words))
                spot = spot.moved(dy=_note_mm(lines))
        return tuple(items)


@dataclass(frozen=True)
class LegendBlock:
    """The symbols and lines of the figures that are not explained beside them."""

    symbols: tuple[str, ...]
    lines: tuple[LineSample, ...]
    catalogue: Mapping[str, SymbolInfo]
    paper: Paper

    def _laid_out(self, at: Point, width_mm: float) -> Legend:
        return lay_out_legend(
            at=at,
            width_mm=width_mm,
            columns=max(1, int(width_mm // LEGEND_COLUMN_MM)),
            symbols=self.symbols,
            catalogue=self.catalogue,
            lines=self.lines,
            width_of_symbol_lines_mm=widths_for(self.paper).symbol,
        )

    def height_mm(self, width_mm: float) -> float:
        """Return the height of the legend."""
        return self._laid_out(Point(0.0, 0.0), width_mm).height_mm

    def place(self, at: Point, width_mm: float) -> tuple[Item, ...]:
        """Return the legend."""
        return self._laid_out(at, width_mm).items


def _fitted(table: Table, width_mm: float) -> FittedTable | None:
    """Return a table at a width, every column wrapped if it must be; None where it is too wide."""
    wrapped = replace(table, columns=tuple(replace(c, wraps=True) for c in table.columns))
    for tried in (table, wrapped):
        try:
            return fit_table(tried, width_mm)
        except DoesNotFitError:
            continue
    return None


def _heading(ident: str, words: str, at: Point) -> Item:
    return text_item(ident, words, at.moved(dy=TAG), TAG, bold=True)


def _note_mm(lines: list[str]) -> float:
    return len(lines) * line_pitch_mm(BODY) + 1.0
