"""Horizontal dimensions under the floor line, from the left-hand corner of the wall.

Up to six points make a chain whose parts sum to the length of the wall; more make running
dimensions from the corner, so that one pull of the tape sets them all out.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Point
from asfitted.layout.elevation.spread import spread
from asfitted.layout.lettering import BODY, text_item
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
MOST_IN_CHAIN = 6
MOST_NAMES = 2  # written after a running dimension
LONGEST_NAMES = 8  # letters; a longer tag stands at its thing only, straight above
FIRST_MM, NEXT_MM = 9.0, 8.0
PAST_MM, GAP_MM = 2.0, 1.0
LABEL_PITCH_MM = 4.3


@dataclass(frozen=True)
class Mark:
    """A point of the wall that is dimensioned: whole mm from the left corner, and what is there."""

    along_mm: int
    names: tuple[str, ...]

    @property
    def words(self) -> str:
        """The running dimension with what stands there."""
        together = " ".join(self.names)
        short = (n for n in (together, *self.names) if len(n) <= LONGEST_NAMES)
        return f"{self.along_mm} {next(short, '')}".strip()


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
    return tuple(Mark(along, tuple(names[:MOST_NAMES])) for along, names in sorted(inside.items()))


def chain_parts(marks: Sequence[Mark]) -> tuple[int, ...]:
    """Return the parts of the chain in mm; they sum to the length of the wall exactly."""
    return tuple(b.along_mm - a.along_mm for a, b in pairwise(marks))


def is_running(view: WallView, marks: Sequence[Mark]) -> bool:
    """Tell whether running dimensions are needed: many points, or parts too short for figures."""
    if len(marks) - 2 > MOST_IN_CHAIN:
        return True
    parts = chain_parts(marks)
    return any(text_width_mm(str(p), BODY) + 1.5 > view.mm(p) for p in parts)


def chain_height_mm(view: WallView, marks: Sequence[Mark]) -> float:
    """Return the room that the dimensions need below the floor line."""
    if is_running(view, marks):
        return FIRST_MM + 7.5 + max(text_width_mm(m.words, BODY) for m in marks)
    return FIRST_MM + NEXT_MM + PAST_MM


def draw_dimensions(drawing: Drawing, view: WallView, marks: Sequence[Mark]) -> None:
    """Draw the dimensions of a wall below its floor line."""
    if is_running(view, marks):
        _draw_running(drawing, view, marks)
    else:
        _draw_chain(drawing, view, marks)


def _draw_chain(drawing: Drawing, view: WallView, marks: Sequence[Mark]) -> None:
    y = view.floor + FIRST_MM
    ends = (marks[0], marks[-1])
    rows = [(y, list(marks))]
    if len(marks) > 2:
        rows.append((y + NEXT_MM, list(ends)))
    last = rows[-1][0]
    for mark in marks:
        foot = last if mark in ends else y
        x = view.x(mark.along_mm)
        line = polyline((x, view.floor + GAP_MM), (x, foot + PAST_MM), width_mm=W.narrow)
        drawing.draw(f"dim:extension:{mark.along_mm}", "dim", line)
    for row_y, row in rows:
        for a, b in pairwise(row):
            _draw_part(drawing, view, a, b, row_y)


def _draw_part(drawing: Drawing, view: WallView, a: Mark, b: Mark, y: float) -> None:
    """Draw one dimension with oblique strokes at its ends and its figure above the line."""
    x0, x1 = view.x(a.along_mm), view.x(b.along_mm)
    strokes: list[Path] = [polyline((x0, y), (x1, y), width_mm=W.narrow)]
    strokes += [polyline((x - 1.0, y + 1.0), (x + 1.0, y - 1.0), width_mm=W.wide) for x in (x0, x1)]
    ident = f"dim:{a.along_mm}-{b.along_mm}"
    drawing.draw(ident, "dim", *strokes)
    figure = str(b.along_mm - a.along_mm)
    at = Point((x0 + x1) / 2, y - 1.3)
    drawing.add(text_item(f"{ident}:figure", figure, at, anchor="middle"))


def _draw_running(drawing: Drawing, view: WallView, marks: Sequence[Mark]) -> None:
    """Draw the origin circle, one line along the wall and a turned figure at each point."""
    y = view.floor + FIRST_MM - 3.0
    x_end = view.right
    line = polyline((view.left, y), (x_end, y), width_mm=W.narrow)
    origin = Circle(Point(view.left, y), 1.5, Stroke(W.narrow), fill="white")
    drawing.draw("dim:running", "dim", line, origin)
    wanted = [view.x(m.along_mm) for m in marks]
    places = spread(
        wanted, LABEL_PITCH_MM, view.left - LABEL_PITCH_MM, view.right + LABEL_PITCH_MM * 3
    )
    top = y + 7.5
    for mark, x_true, x in zip(marks, wanted, places, strict=True):
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
        width = text_width_mm(mark.words, BODY, bold=mark is marks[-1])
        at = Point(x + BODY / 2, top + width)
        text = Text(at, mark.words, BODY, turned=True, bold=mark is marks[-1])
        drawing.draw(f"dim:at:{mark.along_mm}:figure", "text", text)
