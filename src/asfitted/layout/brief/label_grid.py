"""Labels in an even grid on plain A4. Lettering keeps its size; what is too long is wrapped.

Without a size given the grid is our own: as many equal labels as the paper holds, with lines to cut
along (common practice). Where the labels are cut already, the spec gives their size and place.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.foot_line import printable_box
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, lines_of_text, wrap
from asfitted.layout.linework import polyline
from asfitted.layout.sheet_layout import PAPERS, Item

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.brief.label_words import Label
    from asfitted.layout.sheet_layout import Paper, Path
    from asfitted.resolve.stock_facts import LabelGrid

COLUMNS, LEAST_HEIGHT_MM = 3, 20.0
PAD_MM = 2.2
PAPER: Paper = "A4 portrait"
LINE_MM = 0.18  # of what is cut along
ROOM = printable_box(PAPER)


@dataclass(frozen=True)
class Grid:
    """Labels across and down a sheet, the size of each, where the first stands, and gaps, mm."""

    columns: int
    rows: int
    width_mm: float
    height_mm: float
    left_mm: float = ROOM.x0
    top_mm: float = ROOM.y0
    gap_across_mm: float = 0.0
    gap_down_mm: float = 0.0
    has_lines: bool = True

    @property
    def count(self) -> int:
        """How many labels a sheet holds."""
        return self.columns * self.rows

    @property
    def box(self) -> Box:
        """The box round all labels."""
        last = self.cell(self.count - 1)
        return Box(self.left_mm, self.top_mm, last.x1, last.y1)

    def cell(self, place: int) -> Box:
        """Return the box of a label by its place, row by row."""
        row, column = divmod(place, self.columns)
        x = self.left_mm + column * (self.width_mm + self.gap_across_mm)
        y = self.top_mm + row * (self.height_mm + self.gap_down_mm)
        return Box(x, y, x + self.width_mm, y + self.height_mm)


def grid_for(labels: Sequence[Label], asked: LabelGrid) -> Grid:
    """Return the grid asked for, or an even one that the longest label fits.

    Raises:
        DoesNotFitError: the grid asked for is larger than the sheet, or too small for a label.
    """
    room = _room(asked)
    across, down = asked.gap_across_mm or 0.0, asked.gap_down_mm or 0.0
    columns = asked.columns or _columns(labels, asked.width_mm, room.width, across)
    width = asked.width_mm or (room.width - (columns - 1) * across) / columns
    _refuse_narrow(labels, width)
    tallest = max(label_height_mm(label, width) for label in labels)
    least = max(tallest, LEAST_HEIGHT_MM)
    rows = asked.rows or _count_in(room.height, asked.height_mm or least, down)
    height = asked.height_mm or (room.height - (rows - 1) * down) / max(rows, 1)
    if tallest > height + 1e-6:
        raise DoesNotFitError(
            f"labels: the longest label needs {tallest:.0f} mm, a label is {height:.0f} mm high: "
            "write a greater height, a greater width or fewer rows"
        )
    grid = Grid(
        columns, rows, width, height, room.x0, room.y0, across, down, not asked.is_cut_already
    )
    if rows < 1 or not _edge(asked).grown(1e-6).holds(grid.box):
        raise DoesNotFitError(
            f"labels: {columns} x {rows} of {width:.0f} x {height:.0f} mm are larger than the "
            f"{room.width:.0f} x {room.height:.0f} mm of the sheet"
        )
    return grid


def _edge(asked: LabelGrid) -> Box:
    """Return what the labels may fill: on a stock of labels the paper down to the foot line."""
    if not asked.is_cut_already:
        return ROOM
    return Box(0.0, 0.0, PAPERS[PAPER][0], ROOM.y1)


def _room(asked: LabelGrid) -> Box:
    """Return what the labels are to fill: as much at the right as at the left."""
    left = ROOM.x0 if asked.left_margin_mm is None else asked.left_margin_mm
    top = ROOM.y0 if asked.top_margin_mm is None else asked.top_margin_mm
    return Box(left, top, PAPERS[PAPER][0] - left, ROOM.y1)


def _count_in(room_mm: float, size_mm: float, gap_mm: float) -> int:
    return int((room_mm + gap_mm + 1e-6) // (size_mm + gap_mm))


def _refuse_narrow(labels: Sequence[Label], width_mm: float) -> None:
    widest = max(_least_width(label) for label in labels)
    if widest > width_mm + 1e-6:
        raise DoesNotFitError(
            f"labels: the longest word needs {widest:.0f} mm, a label is {width_mm:.0f} mm wide: "
            "write fewer columns or a greater width"
        )


def _columns(labels: Sequence[Label], width_mm: float | None, room_mm: float, gap_mm: float) -> int:
    """Return three columns, or fewer where a word is wider than that."""
    if width_mm:
        return max(_count_in(room_mm, width_mm, gap_mm), 1)
    widest = max(_least_width(label) for label in labels)
    return max(min(COLUMNS, _count_in(room_mm, widest, gap_mm)), 1)


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
    """Return one sheet of labels, with lines to cut along where it is paper."""
    items = [Item("cut-lines", "outline", _lines(grid))] if grid.has_lines else []
    for place, label in enumerate(labels):
        cell = grid.cell(place)
        at = Point(cell.x0 + PAD_MM, cell.y0 + PAD_MM + TAG)
        tag = lines_of_text([label.tag], at, TAG, bold=True)
        under = at.moved(dy=line_pitch_mm(BODY) + 0.6)
        words = lines_of_text(label_lines(label, grid.width_mm), under)
        items.append(Item(f"label:{label.ident}", "text", (*tag, *words)))
    return tuple(items)


def _lines(grid: Grid) -> tuple[Path, ...]:
    """Return the lines round and between the labels."""
    box = grid.box
    xs = [grid.cell(column).x0 for column in range(grid.columns)]
    ys = [grid.cell(row * grid.columns).y0 for row in range(grid.rows)]
    upright = [polyline((x, box.y0), (x, box.y1), width_mm=LINE_MM) for x in (*xs, box.x1)]
    level = [polyline((box.x0, y), (box.x1, y), width_mm=LINE_MM) for y in (*ys, box.y1)]
    return (*upright, *level)
