"""Ready-made items of a single-line diagram: wires, signs, words, flags."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from asfitted.geometry import Point
from asfitted.layout.lettering import BODY, TAG, lines_of_text
from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.sheet_layout import Item, SymbolUse, Text
from asfitted.layout.single_line.room import PITCH, SIGN, SPINE, STROKES, TAG_PITCH, TURNED_X
from asfitted.layout.single_line.signs import STROKES_SIGN
from asfitted.layout.single_line.tree import FLAG
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import Pattern
    from asfitted.layout.sheet_model import Model

WIDTHS = widths_for("A3")
Turn = Literal[0, 90, 180, 270]
#: Turn of a flag by the side on which its line joins it.
FLAG_JOINED_ABOVE: Turn = 90
FLAG_JOINED_BELOW: Turn = 270
FLAG_JOINED_LEFT: Turn = 0
FLAG_JOINED_RIGHT: Turn = 180


def line_of(state: State) -> tuple[float, Pattern]:
    """Return width and pattern of a line: wide for new, narrow for existing, dotted for removed."""
    if state is State.NEW:
        return WIDTHS.wide, "continuous"
    return WIDTHS.narrow, "continuous" if state is State.EXISTING else "dotted"


def wire(
    ident: str, net: str, *points: tuple[float, float], state: State = State.NEW, title: str = ""
) -> Item:
    """Return a wire through the points."""
    width, pattern = line_of(state)
    part = polyline(*points, width_mm=width, pattern=pattern)
    return Item(ident, "wire", (part,), net=net, title=title)


def sign(
    ident: str,
    model: Model,
    name: str,
    centre: Point,
    *,
    turn: Turn = 0,
    state: State = State.NEW,
    size_mm: float = SIGN,
) -> Item:
    """Return a sign with the middle of its box at a point."""
    width = WIDTHS.symbol if state is State.NEW else WIDTHS.narrow
    at = centre.moved(-size_mm / 2, -size_mm / 2)
    use = SymbolUse(name, at, size_mm, turn=turn, width_mm=width)
    return Item(ident, "symbol", (use,), title=model.symbols[name].legend)


def strokes(ident: str, model: Model, centre: Point, *, turn: Turn = 0, state: State) -> Item:
    """Return the three oblique strokes of a three-phase line."""
    return sign(ident, model, STROKES_SIGN, centre, turn=turn, state=state, size_mm=STROKES)


def struck(ident: str, corner: Point, width_mm: float) -> Item:
    """Return the stroke through a sign that goes: from the foot of its box to the top right.

    Through a whole sign it leaves the middle free, where some signs carry letters.
    """
    foot, top = Point(corner.x, corner.y + SIGN - 0.5), Point(corner.x + width_mm, corner.y + 0.5)
    ends = ((0.0, 0.24), (0.76, 1.0)) if width_mm >= SIGN else ((0.0, 1.0),)
    strokes = tuple(
        polyline(
            *(
                (foot.x + (top.x - foot.x) * share, foot.y + (top.y - foot.y) * share)
                for share in piece
            ),
            width_mm=WIDTHS.symbol,
        )
        for piece in ends
    )
    return Item(f"{ident}:struck", "outline", strokes, title="removed")


def protective(ident: str, *points: tuple[float, float], title: str = "") -> Item:
    """Return a protective conductor through the points."""
    line = polyline(*points, width_mm=WIDTHS.symbol, pattern="dashed")
    return Item(ident, "wire", (line,), net="PE", title=title or "protective conductor")


def flag(ident: str, centre: Point, turn: Turn, link: str, size_mm: float = SIGN) -> Item:
    """Return an off-page flag that follows to its twin on another sheet."""
    corner = centre.moved(-size_mm / 2, -size_mm / 2)
    use = SymbolUse(FLAG, corner, size_mm, turn=turn, width_mm=WIDTHS.symbol)
    return Item(ident, "flag", (use,), link=link)


def words(ident: str, lines: Sequence[str], at: Point, *, bold: bool = False) -> list[Item]:
    """Return lines of body text, the top of the first at ``at``; nothing for no lines."""
    if not any(lines):
        return []
    return [Item(ident, "text", lines_of_text(list(lines), at.moved(dy=BODY), BODY, bold=bold))]


def tags(ident: str, lines: Sequence[str], at: Point) -> list[Item]:
    """Return lines of bold tags, the top of the first at ``at``."""
    if not any(lines):
        return []
    return [Item(ident, "text", lines_of_text(list(lines), at.moved(dy=TAG), TAG, bold=True))]


def turned(ident: str, lines: Sequence[str], spine: float, foot: float) -> list[Item]:
    """Return the text of an upright line: the first line left of it, the others right of it.

    All lines start at ``foot`` and read from the right-hand side of the sheet.
    """
    descender = BODY * 0.33
    texts = []
    for i, line in enumerate(lines):
        if i == 0:
            x = spine - TURNED_X - descender
        else:
            x = spine + TURNED_X + 1.05 * BODY + (i - 1) * PITCH
        texts.append(Text(Point(x, foot), line, BODY, turned=True))
    return [Item(ident, "text", tuple(texts))] if texts else []


def tag_block_mm(lines: Sequence[str]) -> float:
    """Return the height of lines of tags, mm."""
    return len(lines) * TAG_PITCH


def left_of(spine: float) -> float:
    """Return the left edge of the words of the column whose wire is at ``spine``."""
    return spine - SPINE + 0.8
