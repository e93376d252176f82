"""Labels in a grid with cut marks. Lettering keeps its size; what is too long is wrapped."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.brief.flow import AREA
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, lines_of_text, wrap
from asfitted.layout.linework import polyline
from asfitted.layout.sheet_layout import Item

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.brief.label_words import Label
    from asfitted.layout.sheet_layout import Path
    from asfitted.resolve.stock_facts import LabelGrid

COLUMNS, LEAST_HEIGHT_MM = 3, 20.0
PAD_MM = 2.2
MARK_MM = 3.0
TITLE_MM = 10.0
ROOM = Box(AREA.x0, AREA.y0 + TITLE_MM, AREA.x1, AREA.y1)


@dataclass(frozen=True)
class Grid:
    """Labels across and down a sheet, and the size of each, mm."""

    columns: int
    rows: int
    width_mm: float
    height_mm: float

    @property
    def count(self) -> int:
        """How many labels a sheet holds."""
        return self.columns * self.rows


def grid_for(labels: Sequence[Label], asked: LabelGrid) -> Grid:
    """Return the grid asked for, or what the longest label needs.

    Raises:
        DoesNotFitError: the grid asked for is larger than the sheet, or too small for a label.
    """
    columns = asked.columns or _columns(labels, asked.width_mm)
    width = asked.width_mm or ROOM.width / columns
    widest = max(_least_width(label) for label in labels)
    if widest > width + 1e-6:
        raise DoesNotFitError(
            f"labels: the longest word needs {widest:.0f} mm, a label is {width:.0f} mm wide: "
            "write fewer columns or a greater width"
        )
    tallest = max(label_height_mm(label, width) for label in labels)
    height = asked.height_mm or (ROOM.height / asked.rows if asked.rows else 0.0)
    if height and tallest > height + 1e-6:
        raise DoesNotFitError(
            f"labels: the longest label needs {tallest:.0f} mm, a label is {height:.0f} mm high: "
            "write a greater height, a greater width or fewer rows"
        )
    height = height or max(tallest, LEAST_HEIGHT_MM)
    rows = asked.rows or int((ROOM.height + 1e-6) // height)
    if columns * width > ROOM.width + 1e-6 or rows * height > ROOM.height + 1e-6 or rows < 1:
        raise DoesNotFitError(
            f"labels: {columns} x {rows} of {width:.0f} x {height:.0f} mm are larger than the "
            f"{ROOM.width:.0f} x {ROOM.height:.0f} mm of the sheet"
        )
    return Grid(columns, rows, width, height)


def _columns(labels: Sequence[Label], width_mm: float | None) -> int:
    """Return three columns, or fewer where a word is wider than that."""
    if width_mm:
        return max(int((ROOM.width + 1e-6) // width_mm), 1)
    widest = max(_least_width(label) for label in labels)
    return max(min(COLUMNS, int(ROOM.width // widest)), 1)


def _least_width(label: Label) -> float:
    words = [w for line in label.lines for w in line.split()]
    widths = [text_width_mm(w, BODY) for w in words]
    return max([text_width_mm(label.tag, TAG, bold=True), *widths]) + 2 * PAD_MM


def label_lines(label: Label, width_mm: float) -> list[str]:
    """Return the lines under the tag, broken to the width of the label."""
    return [part for line in label.lines for part in wrap(line, width_mm - 2 * PAD_MM, BODY)]


def label_height_mm(label: Label, width_mm: float) -> float:
    """Return the height that a label needs at a width, mm."""
    return 2 * PAD_MM + TAG + len(label_lines(label, width_mm)) * line_pitch_mm(BODY) + 1.0


def label_items(labels: Sequence[Label], grid: Grid) -> tuple[Item, ...]:
    """Return one sheet of labels with its cut marks."""
    items = [Item("cut-marks", "outline", _marks(grid))]
    for place, label in enumerate(labels):
        row, column = divmod(place, grid.columns)
        at = Point(
            ROOM.x0 + column * grid.width_mm + PAD_MM,
            ROOM.y0 + row * grid.height_mm + PAD_MM + TAG,
        )
        tag = lines_of_text([label.tag], at, TAG, bold=True)
        under = at.moved(dy=line_pitch_mm(BODY) + 0.6)
        words = lines_of_text(label_lines(label, grid.width_mm), under)
        items.append(Item(f"label:{label.ident}", "text", (*tag, *words)))
    return tuple(items)


def _marks(grid: Grid) -> tuple[Path, ...]:
    """Return a small cross at each corner of the grid, to lay a ruler against."""
    marks = []
    right, foot = ROOM.x0 + grid.columns * grid.width_mm, ROOM.y0 + grid.rows * grid.height_mm
    half = MARK_MM / 2
    for i in range(grid.columns + 1):
        for j in range(grid.rows + 1):
            x, y = ROOM.x0 + i * grid.width_mm, ROOM.y0 + j * grid.height_mm
            left, end = max(x - half, ROOM.x0), min(x + half, right)
            top, low = max(y - half, ROOM.y0), min(y + half, foot)
            marks.append(polyline((left, y), (end, y), width_mm=0.18))
            marks.append(polyline((x, top), (x, low), width_mm=0.18))
    return tuple(marks)
