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
    from asfitted.layout.sheet_layout import Primitive
    from asfitted.resolve.installation import Wall

W = widths_for("A3")
LONGEST_NAME = 8  # letters; a longer tag stands at its thing only, straight above
LONGEST_LINE = 10  # letters of names on one line; more make another line
FIRST_MM, GAP_MM = 9.0, 1.0
LABEL_PITCH_MM = 4.3


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
    wall: Wall,
    things: Sequence[Thing],
    pieces: Sequence[RunPiece],
    others: Sequence[tuple[float, str]],
) -> tuple[Mark, ...]:
    """Return the points to dimension, corner to corner, each once."""
    named: dict[int, list[str]] = {0: [], round(wall.length_mm): []}

    def note(along: float, name: str) -> None:
        names = named.setdefault(round(along), [])
        if name and name not in names:
            names.append(name)

    for thing in things:
        note(thing.at.along, thing.tag)
    for piece in pieces:
        for end in (piece.start, piece.end):
            if 1.0 < end.along < wall.length_mm - 1.0:
                note(end.along, piece.run.tag)
    for along, name in others:
        note(along, name)
    for opening in wall.openings:
        note(opening.from_mm, opening.kind.split()[-1])
        note(opening.from_mm + opening.width_mm, opening.kind.split()[-1])
    inside = {a: n for a, n in named.items() if 0 <= a <= round(wall.length_mm)}
    return tuple(Mark(along, tuple(names)) for along, names in sorted(inside.items()))


def chain_parts(marks: Sequence[Mark]) -> tuple[int, ...]:
    """Return the parts of the chain in mm; they sum to the length of the wall exactly."""
    return tuple(b.along_mm - a.along_mm for a, b in pairwise(marks))


def chain_height_mm(marks: Sequence[Mark]) -> float:
    """Return the room that the dimensions need below the floor line."""
    return FIRST_MM + 7.5 + max(text_width_mm(line, BODY) for m in marks for line in m.lines)


def draw_dimensions(drawing: Drawing, view: WallView, marks: Sequence[Mark]) -> None:
    """Draw the origin circle, one line along the wall and a turned figure at each point."""
    y = view.floor + FIRST_MM - 3.0
    along = polyline((view.left, y), (view.right, y), width_mm=W.narrow)
    origin = Circle(Point(view.left, y), 1.5, Stroke(W.narrow), fill="white")
    drawing.draw("dim:running", "dim", along, origin)
    labels = [(mark, line, i) for mark in marks for i, line in enumerate(mark.lines)]
    wanted = [view.x(mark.along_mm) for mark, _, _ in labels]
    places = spread(
        wanted, LABEL_PITCH_MM, view.left - LABEL_PITCH_MM, view.right + LABEL_PITCH_MM * 3
    )
    for (mark, line, i), x in zip(labels, places, strict=True):
        ident = f"dim:at:{mark.along_mm}"
        if i == 0:
            _draw_mark(drawing, view, mark, x)
        figure = f"{ident}:figure" if i == 0 else f"{ident}:names:{i}"
        is_last = mark is marks[-1]
        width = text_width_mm(line, BODY, bold=is_last)
        at = Point(x + BODY / 2, y + 7.5 + width)
        drawing.draw(figure, "text", Text(at, line, BODY, turned=True, bold=is_last))


def _draw_mark(drawing: Drawing, view: WallView, mark: Mark, x: float) -> None:
    """Draw the line from a point of the wall to its figure, and the arrow head on the long line."""
    y = view.floor + FIRST_MM - 3.0
    x_true = view.x(mark.along_mm)
    parts: list[Primitive] = [
        polyline(
            (x_true, view.floor + GAP_MM if mark.along_mm else y + 1.5),
            (x_true, y + 2.0),
            (x, y + 5.5),
            (x, y + 6.7),
            width_mm=W.narrow,
        )
    ]
    if mark.along_mm:
        head = (Point(x_true, y), Point(x_true - 2.2, y - 0.7), Point(x_true - 2.2, y + 0.7))
        parts.append(Path(head, None, closed=True, fill="black"))
    drawing.draw(f"dim:at:{mark.along_mm}", "dim", *parts)
