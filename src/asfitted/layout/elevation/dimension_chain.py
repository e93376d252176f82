"""Running dimensions under the floor line, from the left-hand corner of the wall.

One pull of the tape sets them all out; each figure is followed by what stands there.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Point
from asfitted.layout.elevation.spread import spread
from asfitted.layout.lettering import BODY
from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.sheet_layout import Circle, Path, Stroke, Text

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.runs_on_wall import RunPiece
    from asfitted.layout.elevation.things_on_wall import Thing
    from asfitted.layout.elevation.wall_view import WallView
    from asfitted.layout.elevation.window import Window
    from asfitted.layout.sheet_layout import Primitive
    from asfitted.resolve.installation import Opening

W = widths_for("A3")
LONGEST_NAME = 8  # letters; a longer tag stands at its thing only, straight above
LONGEST_LINE = 10  # letters of names on one line; more make another line
FIRST_MM, GAP_MM = 9.0, 1.0
LABEL_PITCH_MM = 4.3
ENDS = 4  # labels that may stand left and right of the line


@dataclass(frozen=True)
class Mark:
    """A point of the wall that is dimensioned: whole mm from the left corner, and what is there."""

    along_mm: int
    names: tuple[str, ...]

    @property
    def lines(self) -> tuple[str, ...]:
        """The running dimension with what stands there; many names take more lines."""
        lines, names = [str(self.along_mm)], ""
        for name in (n for n in self.names if len(n) <= LONGEST_NAME):
            if names and len(f"{names} {name}") > LONGEST_LINE:
                lines.append("")
                names = ""
            names = f"{names} {name}".strip()
            lines[-1] = f"{lines[-1]} {name}".strip()
        return tuple(lines)


def marks_of(
    window: Window,
    things: Sequence[Thing],
    pieces: Sequence[RunPiece],
    openings: Sequence[Opening],
    others: Sequence[tuple[float, str]],
) -> tuple[Mark, ...]:
    """Return the points to dimension, from side to side of a view, each once."""
    first, last = round(window.from_mm), round(window.to_mm)
    named: dict[int, list[str]] = {first: [], last: []}

    def note(along: float, name: str) -> None:
        names = named.setdefault(round(along), [])
        if name and name not in names:
            names.append(name)

    for thing in things:
        note(thing.at.along, thing.tag)
    for piece in pieces:
        for end in (piece.start, piece.end):
            if window.from_mm + 1.0 < end.along < window.to_mm - 1.0:
                note(end.along, piece.run.tag)
    for along, name in others:
        note(along, name)
    for opening in openings:
        note(opening.from_mm, opening.kind.split()[-1])
        note(opening.from_mm + opening.width_mm, opening.kind.split()[-1])
    inside = {a: n for a, n in named.items() if first <= a <= last}
    return tuple(Mark(along, tuple(names)) for along, names in sorted(inside.items()))


def chain_parts(marks: Sequence[Mark]) -> tuple[int, ...]:
    """Return the parts of the chain in mm; they sum to the length of the wall exactly."""
    return tuple(b.along_mm - a.along_mm for a, b in pairwise(marks))


def chain_height_mm(marks: Sequence[Mark]) -> float:
    """Return the room that the dimensions need below the floor line."""
    return (
        FIRST_MM
        + 7.5
        + max(text_width_mm(line, BODY, bold=True) for m in marks for line in m.lines)
    )


def written_marks(marks: Sequence[Mark], width_mm: float) -> tuple[Mark, ...]:
    """Return the marks that have room along a line of this length, with what is said of them.

    Where they are too many the names go first, from the most crowded; then figures in the most
    crowded places. Both ends always stay.
    """
    most = int((width_mm + LABEL_PITCH_MM * ENDS) / LABEL_PITCH_MM) + 1
    kept = [Mark(m.along_mm, m.names) for m in marks]
    spare = sum(len(m.lines) for m in kept) - most
    if spare <= 0:
        return tuple(kept)
    kept = [m if len(m.lines) == 1 else Mark(m.along_mm, m.names[:1]) for m in kept]
    while len(kept) > max(most, 2):
        gaps = [kept[i + 1].along_mm - kept[i - 1].along_mm for i in range(1, len(kept) - 1)]
        del kept[1 + gaps.index(min(gaps))]
    return tuple(kept)


def draw_dimensions(drawing: Drawing, view: WallView, marks: Sequence[Mark]) -> tuple[Mark, ...]:
    """Draw one line along the wall and a turned figure at each point, as many as have room.

    The line starts with a circle at the left-hand corner of the wall; in a later part of a long
    wall and in a detail the figures still count from that corner.

    Returns:
        The marks that are written.
    """
    y = view.foot + FIRST_MM - 3.0
    along = polyline((view.left, y), (view.right, y), width_mm=W.narrow)
    parts: list[Primitive] = [along]
    if view.shown.left.kind == "corner":
        parts.append(Circle(Point(view.left, y), 1.5, Stroke(W.narrow), fill="white"))
    drawing.draw("dim:running", "dim", *parts)
    written = written_marks(marks, view.right - view.left)
    labels = [(mark, line, i) for mark in written for i, line in enumerate(mark.lines)]
    wanted = [view.x(mark.along_mm) for mark, _, _ in labels]
    places = spread(
        wanted, LABEL_PITCH_MM, view.left - LABEL_PITCH_MM, view.right + LABEL_PITCH_MM * 3
    )
    for (mark, line, i), x in zip(labels, places, strict=True):
        ident = f"dim:at:{mark.along_mm}"
        if i == 0:
            _draw_mark(drawing, view, mark, x)
        figure = f"{ident}:figure" if i == 0 else f"{ident}:names:{i}"
        is_end = mark is written[-1] or (mark is written[0] and mark.along_mm > 0)
        width = text_width_mm(line, BODY, bold=is_end)
        at = Point(x + BODY / 2, y + 7.5 + width)
        drawing.draw(figure, "text", Text(at, line, BODY, turned=True, bold=is_end))
    return written


def _draw_mark(drawing: Drawing, view: WallView, mark: Mark, x: float) -> None:
    """Draw the line from a point of the wall to its figure, and the arrow head on the long line."""
    y = view.foot + FIRST_MM - 3.0
    x_true = view.x(mark.along_mm)
    is_origin = x_true - view.left < 0.01
    top = y + 1.5 if is_origin and view.shown.left.kind == "corner" else view.foot + GAP_MM
    parts: list[Primitive] = [
        polyline((x_true, top), (x_true, y + 2.0), (x, y + 5.5), (x, y + 6.7), width_mm=W.narrow)
    ]
    if not is_origin:
        head = (Point(x_true, y), Point(x_true - 2.2, y - 0.7), Point(x_true - 2.2, y + 0.7))
        parts.append(Path(head, None, closed=True, fill="black"))
    drawing.draw(f"dim:at:{mark.along_mm}", "dim", *parts)
