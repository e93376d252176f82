"""Match lines: where a room goes on, on another sheet."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY, box_of
from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.sheet_layout import Item, Text

if TYPE_CHECKING:
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.free_room import FreeRoom
    from asfitted.layout.plan.plan_parts import PlanPart
    from asfitted.layout.sheet_model import Numbers

W = widths_for("A3")
OUT_MM = 6.0  # the line goes on so far beyond the window
CLEAR_MM = 1.6
STEP_MM = 3.0
CLOSE_MM = 0.3  # from other ink: the line itself is near
WIDE_NUMBER = "000"  # words keep room for a sheet number as wide as this


@dataclass(frozen=True)
class MatchWords:
    """The words of a match line, written when the sheets are numbered."""

    ident: str
    at: Point
    turned: bool
    key: str  # of the sheet beyond
    lead: str = "match line: "

    def text(self, sheet: str) -> Text:
        """Return the words with a sheet number."""
        words = f"{self.lead}sheet {sheet}"
        return Text(self.at, words, BODY, "middle", turned=self.turned)

    def item(self, numbers: Numbers) -> Item:
        """Return the item with the true number."""
        sheet = numbers.by_key.get(self.key, "–")
        return Item(self.ident, "text", (self.text(sheet),), link=f"{sheet}#plan:title")


def draw_match_lines(
    drawing: Drawing, part: PlanPart, box: Box, keys: dict[int, str]
) -> tuple[MatchWords, ...]:
    """Draw the match lines of a part and keep room for their words outside them.

    Things and runs are in their places already: the words find theirs between them.

    Args:
        drawing: the plan so far.
        part: the part.
        box: its window on the sheet, mm.
        keys: key of the sheet of each part, by its number.
    """
    made = []
    for side, number in part.open_sides:
        ident = f"plan-match:{side}"
        a, b, at, turned = _side(box, side)
        line = polyline(a, b, width_mm=W.wide, pattern="long_dash_double_dot")
        drawing.add(Item(ident, "flag", (line,), title=f"match line, part {number}"))
        words = MatchWords(f"{ident}:words", at, turned, keys.get(number, ""))
        words = _placed_words(drawing.room, words, box, {name for name, _ in part.open_sides})
        drawing.room.take_solid(box_of(words.text(WIDE_NUMBER)).grown(0.5))
        made.append(words)
    return tuple(made)


def _placed_words(room: FreeRoom, words: MatchWords, box: Box, open_sides: set[str]) -> MatchWords:
    """Return words in the free place along their line that is nearest to its middle.

    They stay clear of the lines that cross its ends; a line too short for them is told by its sheet
    alone. Where nothing is free they stand in the middle.
    """
    first, last = ("north", "south") if words.turned else ("west", "east")
    ends = (box.y0, box.y1) if words.turned else (box.x0, box.x1)
    low = ends[0] + CLEAR_MM if first in open_sides else ends[0] - OUT_MM
    high = ends[1] - CLEAR_MM if last in open_sides else ends[1] + OUT_MM
    middle = (ends[0] + ends[1]) / 2
    tried = [lead for lead in (words.lead, "") if _length(replace(words, lead=lead)) <= high - low]
    for lead in tried:
        kept = replace(words, lead=lead)
        half = _length(kept) / 2
        for at in _near(middle, low + half, high - half):
            moved = replace(kept, at=_along(kept, at))
            if room.is_free(box_of(moved.text(WIDE_NUMBER)), CLOSE_MM):
                return moved
    lead = tried[0] if tried else ""
    return replace(words, lead=lead, at=_along(words, middle))


def _length(words: MatchWords) -> float:
    return text_width_mm(words.text(WIDE_NUMBER).text, BODY)


def _along(words: MatchWords, at: float) -> Point:
    return Point(words.at.x, at) if words.turned else Point(at, words.at.y)


def _near(middle: float, low: float, high: float) -> list[float]:
    """Return places between two limits, those nearest to a middle first."""
    count = int((high - low) / STEP_MM)
    first = min(max(middle, low), high)
    spread = {first, low, high, *(first + i * STEP_MM for i in range(-count, count + 1))}
    return sorted((at for at in spread if low <= at <= high), key=lambda at: (abs(at - middle), at))


def _side(box: Box, side: str) -> tuple[tuple[float, float], tuple[float, float], Point, bool]:
    """Return the ends of the line at a side of a window, and where its words stand."""
    out = box.grown(OUT_MM)
    middle = box.centre
    if side in ("east", "west"):
        x = box.x1 if side == "east" else box.x0
        at = Point(x + CLEAR_MM + BODY if side == "east" else x - CLEAR_MM, middle.y)
        return (x, out.y0), (x, out.y1), at, True
    y = box.y0 if side == "north" else box.y1
    at = Point(middle.x, y - CLEAR_MM if side == "north" else y + CLEAR_MM + BODY)
    return (out.x0, y), (out.x1, y), at, False
