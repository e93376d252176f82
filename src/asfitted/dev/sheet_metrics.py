"""Prints how well each sheet of the demo jobs is laid out, in figures.

Run ``python -m asfitted.dev.sheet_metrics`` from the top of the repository. Formulas: crossings and
bends as in "Metrics for graph drawing aesthetics" (J. Visual Languages and Computing 13(5), 2002),
restated from memory; gap, use of area and balance are plain geometry.
"""

from __future__ import annotations

import itertools
import math
import sys
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, NamedTuple

from asfitted.draw.item_boxes import part_box
from asfitted.geometry import Box, Point  # noqa: TC001 - Point types a tuple at run time
from asfitted.layout.frame import usable_box
from asfitted.layout.sheet_layout import Path, SymbolUse, Text
from asfitted.pipeline import check_job, lay_out_job

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.sheet_layout import Item, SheetLayout

_PART_OF_THE_SHEET = ("frame", "frame-label")
_STRAIGHT = 1e-6


class Piece(NamedTuple):
    """One straight piece of a wire."""

    net: str
    start: Point
    end: Point


@dataclass(frozen=True)
class SheetMetrics:
    """Figures of one sheet.

    Attributes:
        wires: How many wires are drawn.
        crossings: Pairs of pieces of different nets that cross.
        bends: Changes of direction of all wires.
        least_gap_mm: Least clear distance of a text from a text or symbol of another item.
        wire_gap_mm: Least distance of parallel wires of different nets; inf where there are none.
        area_use: Box round all content over the room inside the frame.
        ink_use: Boxes of all items over the box round them, overlap counted once by 5 mm cells.
        imbalance: Distance of the middle of the content from that of the sheet over half the
            diagonal; 0 is balanced.
    """

    wires: int
    crossings: int
    bends: int
    least_gap_mm: float
    wire_gap_mm: float
    area_use: float
    ink_use: float
    imbalance: float


def metrics_of(sheet: SheetLayout) -> SheetMetrics:
    """Return the figures of a sheet."""
    content = [item for item in sheet.items if not _is_frame(item)]
    wires = [item for item in content if item.kind == "wire"]
    boxes = [part_box(part) for item in content for part in item.parts]
    whole = _round(boxes)
    usable = usable_box(sheet.paper)
    width, height = sheet.size_mm
    off = math.dist(whole.centre, (width / 2, height / 2)) if whole else 0.0
    return SheetMetrics(
        wires=len(wires),
        crossings=crossings(wires),
        bends=sum(_bends(part) for item in wires for part in item.parts if isinstance(part, Path)),
        least_gap_mm=_least_gap(content),
        wire_gap_mm=_wire_gap(wires),
        area_use=_area(whole) / _area(usable),
        ink_use=_inked(boxes, whole),
        imbalance=off / (math.hypot(width, height) / 2),
    )


def crossings(wires: list[Item]) -> int:
    """Return how many pairs of pieces of different nets cross inside both."""
    pieces = [piece for item in wires for piece in _pieces(item)]
    return sum(
        a.net != b.net and _cross(a, b) for a, b in itertools.combinations(pieces, 2) if _near(a, b)
    )


def _is_frame(item: Item) -> bool:
    return item.kind in _PART_OF_THE_SHEET or item.ident.startswith(("frame", "title-block"))


def _pieces(item: Item) -> Iterator[Piece]:
    for part in item.parts:
        if isinstance(part, Path):
            for start, end in itertools.pairwise(part.points):
                yield Piece(item.net, start, end)


def _near(a: Piece, b: Piece) -> bool:
    return not (
        max(a.start.x, a.end.x) < min(b.start.x, b.end.x)
        or max(b.start.x, b.end.x) < min(a.start.x, a.end.x)
        or max(a.start.y, a.end.y) < min(b.start.y, b.end.y)
        or max(b.start.y, b.end.y) < min(a.start.y, a.end.y)
    )


def _cross(a: Piece, b: Piece) -> bool:
    return (
        _side(a, b.start) * _side(a, b.end) < -_STRAIGHT
        and _side(b, a.start) * _side(b, a.end) < -_STRAIGHT
    )


def _side(piece: Piece, at: Point) -> float:
    (x0, y0), (x1, y1) = piece.start, piece.end
    return (x1 - x0) * (at.y - y0) - (y1 - y0) * (at.x - x0)


def _bends(path: Path) -> int:
    return sum(
        abs(_side(Piece("", a, b), c)) > _STRAIGHT
        for a, b, c in zip(path.points, path.points[1:], path.points[2:], strict=False)
    )


def _least_gap(content: list[Item]) -> float:
    """Return the least clear distance of texts from texts and symbols of other items."""
    boxes = sorted(
        (
            (part_box(part), item.ident, isinstance(part, Text))
            for item in content
            for part in item.parts
            if isinstance(part, Text | SymbolUse)
        ),
        key=lambda pair: pair[0].x0,
    )
    least = math.inf
    for index, (box, ident, is_text) in enumerate(boxes):
        for other, other_ident, other_is_text in boxes[index + 1 :]:
            if other.x0 - box.x1 >= least:
                break
            # symbols in one line touch: they are joined
            if ident != other_ident and (is_text or other_is_text):
                least = min(least, _apart(box, other))
    return least


def _wire_gap(wires: list[Item]) -> float:
    """Return the least distance of two upright or two level pieces of different nets."""
    pieces = [piece for item in wires for piece in _pieces(item)]
    gaps = [
        abs(_across(a) - _across(b))
        for a, b in itertools.combinations(pieces, 2)
        if a.net != b.net and _is_upright(a) == _is_upright(b) and _side_by_side(a, b)
    ]
    return min(gaps, default=math.inf)


def _is_upright(piece: Piece) -> bool:
    return abs(piece.end.x - piece.start.x) < abs(piece.end.y - piece.start.y)


def _across(piece: Piece) -> float:
    return piece.start.x if _is_upright(piece) else piece.start.y


def _side_by_side(a: Piece, b: Piece) -> bool:
    axis = 1 if _is_upright(a) else 0
    (a0, a1), (b0, b1) = (sorted((p.start[axis], p.end[axis])) for p in (a, b))
    return min(a1, b1) - max(a0, b0) > _STRAIGHT


def _apart(a: Box, b: Box) -> float:
    dx = max(a.x0 - b.x1, b.x0 - a.x1, 0.0)
    dy = max(a.y0 - b.y1, b.y0 - a.y1, 0.0)
    return math.hypot(dx, dy)


def _round(boxes: list[Box]) -> Box | None:
    whole = boxes[0] if boxes else None
    for box in boxes[1:]:
        whole = whole.joined(box) if whole else box
    return whole


def _area(box: Box | None) -> float:
    return box.width * box.height if box else 0.0


def _inked(boxes: list[Box], whole: Box | None, cell_mm: float = 5.0) -> float:
    """Return the share of 5 mm cells that hold a text, symbol or line end of the content."""
    if whole is None or not _area(whole):
        return 0.0
    across, down = (max(1, math.ceil(side / cell_mm)) for side in (whole.width, whole.height))
    cells = set()
    for box in boxes:
        if box.width * box.height > _area(whole) / 4:
            continue  # an outline round everything is not ink
        xs = range(int((box.x0 - whole.x0) / cell_mm), int((box.x1 - whole.x0) / cell_mm) + 1)
        ys = range(int((box.y0 - whole.y0) / cell_mm), int((box.y1 - whole.y0) / cell_mm) + 1)
        cells |= {(x, y) for x in xs for y in ys if x < across and y < down}
    return len(cells) / (across * down)


def main() -> int:
    """Run the command."""
    heads = ("wires", "cross", "bends", "gap mm", "wires mm", "area", "ink", "off centre")
    for spec in sorted(FilePath("specs").glob("*.yaml")):
        sys.stdout.write(f"\n{spec.stem:<34}" + "".join(f"{head:>11}" for head in heads) + "\n")
        for sheet in lay_out_job(check_job(spec)):
            if sheet.section == "Drawings":
                m = metrics_of(sheet)
                sys.stdout.write(
                    f"{sheet.name:<34}{m.wires:>11}{m.crossings:>11}{m.bends:>11}"
                    f"{m.least_gap_mm:>11.2f}{m.wire_gap_mm:>11.2f}{m.area_use:>11.2f}{m.ink_use:>11.2f}"
                    f"{m.imbalance:>11.2f}\n"
                )
    return 0


if __name__ == "__main__":
    sys.exit(main())
