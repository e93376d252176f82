"""Panels beside the view: key plan, notes and tables, packed into what the view leaves free."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol

from asfitted.errors import DoesNotFitError
from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.elevation.free_boxes import without
from asfitted.layout.elevation.key_inset import WIDTH_MM, key_height_mm, key_inset
from asfitted.layout.lettering import (
    BODY,
    TAG,
    line_pitch_mm,
    lines_of_text,
    shortened,
    text_item,
    wrap,
)
from asfitted.layout.sheet_layout import Item
from asfitted.layout.table import fit_table, table_items

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.elevation.key_inset import ShownWall
    from asfitted.layout.table import Table
    from asfitted.resolve.installation import Installation, Room

HEAD_MM = TAG + 2.5
NOTE_GAP_MM = 0.5
GAP_X, GAP_Y = 7.0, 6.0
ELSEWHERE_MM = 200.0  # waste that the wished-for side of the view is worth
RANK_MM = 25.0  # waste that a better width is worth


class Panel(Protocol):
    """A block that can be laid out at several widths."""

    @property
    def beside(self) -> bool:
        """Whether it would rather stand beside the view than below it."""

    @property
    def widths(self) -> tuple[float, ...]:
        """Widths to try, best first, mm."""

    def height(self, width: float) -> float | None:
        """Return the height needed at a width, or None when it is too narrow."""

    def items(self, at: Point, width: float) -> tuple[Item, ...]:
        """Return the items, from the top left corner."""


@dataclass(frozen=True)
class KeyPanel:
    """The small key plan, with the walls that the sheet shows."""

    installation: Installation
    room: Room
    shown: tuple[ShownWall, ...]
    is_low: bool = False  # for small paper
    beside: bool = True

    @property
    def widths(self) -> tuple[float, ...]:
        """Its one width."""
        return (WIDTH_MM,)

    def height(self, width: float) -> float | None:
        """Return its fixed height."""
        return key_height_mm(is_low=self.is_low) if width >= WIDTH_MM else None

    def items(self, at: Point, width: float) -> tuple[Item, ...]:
        """Return the key plan."""
        _ = width
        return key_inset(self.installation, self.room, self.shown, at, is_low=self.is_low)


@dataclass(frozen=True)
class NotesPanel:
    """Numbered notes, wrapped, under their heading."""

    notes: tuple[str, ...]
    title: str = "Notes"
    ident: str = "note"
    widths: tuple[float, ...] = (66.0, 78.0, 92.0, 110.0, 134.0, 176.0, 199.0)
    beside: bool = True
    first: int = 1

    def _lines(self, width: float) -> list[tuple[int, list[str]]]:
        return [(i, wrap(n, width - 6.0, BODY)) for i, n in enumerate(self.notes, start=self.first)]

    def height(self, width: float) -> float | None:
        """Return the height of heading and notes, or None where the heading is wider."""
        if not _heading_fits(self.title, width, max(self.widths)):
            return None
        return self.height_mm(width)

    def height_mm(self, width: float) -> float:
        """Return the height of heading and notes."""
        lines = sum(len(wrapped) for _, wrapped in self._lines(width))
        return HEAD_MM + lines * line_pitch_mm(BODY) + len(self.notes) * NOTE_GAP_MM

    def items(self, at: Point, width: float) -> tuple[Item, ...]:
        """Return heading and notes."""
        head = at.moved(dy=TAG)
        title = shortened(self.title, width, TAG, bold=True)
        items = [text_item(f"{self.ident}s:title", title, head, TAG, bold=True)]
        y = at.y + HEAD_MM + BODY
        for number, lines in self._lines(width):
            items.append(text_item(f"{self.ident}:{number}:number", str(number), Point(at.x, y)))
            words = lines_of_text(lines, Point(at.x + 6.0, y))
            items.append(Item(f"{self.ident}:{number}", "text", words))
            y += len(lines) * line_pitch_mm(BODY) + NOTE_GAP_MM
        return tuple(items)


@dataclass(frozen=True)
class TablePanel:
    """A ruled table under a heading."""

    ident: str
    title: str
    table: Table
    widths: tuple[float, ...] = (150.0, 128.0, 112.0, 100.0, 170.0, 195.0, 90.0, 80.0, 66.0)
    beside: bool = False

    def height(self, width: float) -> float | None:
        """Return the height of heading and table."""
        if not _heading_fits(self.title, width, max(self.widths)):
            return None
        try:
            fitted = fit_table(self.table, width)
        except DoesNotFitError:
            return None
        return HEAD_MM + fitted.header_mm + sum(fitted.row_mm)

    def items(self, at: Point, width: float) -> tuple[Item, ...]:
        """Return heading and table."""
        fitted = fit_table(self.table, width)
        title = shortened(self.title, width, TAG, bold=True)
        head = text_item(f"{self.ident}:title", title, at.moved(dy=TAG), TAG, bold=True)
        rows = range(len(self.table.rows))
        made, _ = table_items(self.ident, fitted, rows, at.moved(dy=HEAD_MM))
        return (head, *made)


def _heading_fits(title: str, width: float, widest: float) -> bool:
    """Tell whether a heading has room; at the widest choice it is cut rather than left out."""
    return width >= widest or text_width_mm(title, TAG, bold=True) <= width


@dataclass(frozen=True)
class PackedPanels:
    """What found room, and the indices of the panels that did not."""

    items: tuple[Item, ...]
    left_out: tuple[int, ...]


def pack(panels: Sequence[Panel], free: Sequence[Box], view_end_mm: float) -> PackedPanels:
    """Place panels one after another where they waste least; the order is their importance.

    Args:
        panels: what to place.
        free: the greatest free rectangles.
        view_end_mm: y of the foot of the views: what starts above it stands beside them.
    """
    left = tuple(free)
    items: list[Item] = []
    left_out = []
    for index, panel in enumerate(panels):
        choice = _best_place(panel, left, view_end_mm)
        if choice is None:
            left_out.append(index)
            continue
        box, width, height = choice
        items.extend(panel.items(Point(box.x0, box.y0), width))
        taken = Box(box.x0 - GAP_X, box.y0 - GAP_Y, box.x0 + width + GAP_X, box.y0 + height + GAP_Y)
        left = without(left, taken)
    return PackedPanels(tuple(items), tuple(left_out))


def _best_place(
    panel: Panel, free: Sequence[Box], view_end_mm: float
) -> tuple[Box, float, float] | None:
    """Return the free box, width and height that leave the least unusable room."""
    best: tuple[tuple[float, float, float], Box, float, float] | None = None
    for box in free:
        for rank, width in enumerate(panel.widths):
            if width > box.width + 1e-6:
                continue
            height = panel.height(width)
            if height is None or height > box.height + 1e-6:
                continue
            waste = min(box.width - width, box.height - height) + RANK_MM * rank
            waste += 0.0 if (box.y0 < view_end_mm) == panel.beside else ELSEWHERE_MM
            key = (waste, box.y0, box.x0)
            if best is None or key < best[0]:
                best = (key, box, width, height)
    return None if best is None else best[1:]
