"""One part of a strip: pieces and fill over it, the profile, distances under it.

From the top: heading, numbers of the pieces with cables and fill, bars of fill against the
limit, walls, marks of cross-sections, the profile above the floor, distances from the start, and
what is there.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Point
from asfitted.layout.containment.fill_rows import BARS_MM, draw_fill, numbers_height
from asfitted.layout.containment.profile import draw_profile
from asfitted.layout.containment.strip_heading import HEADING_MM, draw_heading, heading_width
from asfitted.layout.containment.strip_parts import HEAD_MM, LABEL_MM, TAIL_MM
from asfitted.layout.containment.strip_view import StripView
from asfitted.layout.elevation.spread import spread
from asfitted.layout.figures import rounded
from asfitted.layout.lettering import BODY
from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.sheet_layout import Item, Text

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.containment.developed_run import DevelopedRun
    from asfitted.layout.containment.run_events import RunEvent
    from asfitted.layout.containment.strip_parts import StripPart, StripScale
    from asfitted.layout.sheet_layout import Paper, Path
    from asfitted.layout.sheet_model import Numbers

WALLS_MM, MARKS_MM, MATCH_MM, OVER_MM = 5.4, 13.0, 7.0, 2.0
LEAST_MM, LEAST_PART_MM = 24.0, 70.0  # narrowest strip; narrowest part, with its match marks
FANS_MM = 5.0  # where leaders go from their place to their label
DISTANCE_MM = 10.5
MANY_SHEETS = 3  # with the table of one run are told from the first to the last
TURNED_MM = 0.9  # a turned text is centred by moving its baseline so far right


Mark = tuple[float, int, str]  # along the run, number of the cross-section, key of its sheet


@dataclass(frozen=True)
class StripBand:
    """A part of a strip with everything that is written on it; draws itself at a place."""

    developed: DevelopedRun
    part: StripPart
    scale: StripScale
    events: tuple[RunEvent, ...]  # of this part
    heights_mm: tuple[float, float]  # paper for what is above the floor, and below it
    marks: tuple[Mark, ...]
    paper: Paper
    twins: tuple[str, str] = ("", "")  # keys of the sheets with the part before and the part after
    pieces_on: tuple[str, ...] = ()  # keys of the sheets with the table of its pieces
    is_beside: bool = False  # the whole of that table is on the sheet of the strip

    @property
    def drawn_mm(self) -> float:
        """Width of the strip itself on paper."""
        return (self.part.over[1] - self.part.over[0]) / self.scale.along

    @property
    def strip_mm(self) -> float:
        """Width of the strip with the labels that reach out over its ends."""
        labels = max(len(self.events), len(self._pieces())) * LABEL_MM
        return max(self.drawn_mm, labels, LEAST_MM if self.part.of == 1 else LEAST_PART_MM)

    @property
    def width_mm(self) -> float:
        """Width with the names of rows, match marks and heading."""
        width = HEAD_MM + TAIL_MM + self.strip_mm
        return max(width, heading_width(self.view(Point(0, 0)), self.paper))

    @property
    def words_mm(self) -> float:
        """Height of the row that says what is at each distance."""
        return max((text_width_mm(e.words, BODY) for e in self.events), default=0.0) + 1.0

    @property
    def height_mm(self) -> float:
        """Height of the whole band."""
        return self._floor_down + self.heights_mm[1] + FANS_MM + DISTANCE_MM + self.words_mm

    def _pieces(self) -> tuple[int, ...]:
        low, high = self.part.over
        found = []
        for i, piece in enumerate(self.developed.pieces):
            a, b = (self.developed.place(along)[0] for along in piece.along)
            if (b > low + 1e-6 and a < high - 1e-6) or (a == b and self.part.holds(a)):
                found.append(i)
        return tuple(found)

    @property
    def _floor_down(self) -> float:
        above = HEADING_MM + numbers_height(self.developed) + FANS_MM + BARS_MM
        return above + WALLS_MM + self._marks_mm + OVER_MM + self.heights_mm[0]

    @property
    def _marks_mm(self) -> float:
        if self.marks:
            return MARKS_MM
        return MATCH_MM if self.part.of > 1 else OVER_MM

    def view(self, at: Point) -> StripView:
        """Return the strip on the sheet when the top left corner of the band is at a point."""
        left = at.x + HEAD_MM + (self.strip_mm - self.drawn_mm) / 2
        floor = at.y + self._floor_down
        return StripView(self.developed, self.part, self.scale, left, floor)

    def items(self, at: Point, numbers: Numbers) -> tuple[Item, ...]:
        """Return the band with its top left corner at a point."""
        view = self.view(at)
        limits = (at.x + HEAD_MM, at.x + HEAD_MM + self.strip_mm)
        ident = f"strip:{self.developed.run.tag}:{self.part.number}"
        y = at.y + HEADING_MM
        items = draw_heading(ident, view, at, self.paper, self._pieces_words(numbers))
        items += draw_fill(ident, view, self._pieces(), (y, *limits), at.x)
        y += numbers_height(self.developed) + FANS_MM + BARS_MM
        items += draw_profile(ident, view, self, (y, y + WALLS_MM, at.x), numbers)
        return (*items, *self._labels(ident, view, limits, at.x))

    def _pieces_words(self, numbers: Numbers) -> str:
        """Return where the table of the pieces is, where it is not on this sheet."""
        if self.is_beside or not self.pieces_on:
            return ""
        found = [numbers.of(key) for key in self.pieces_on]
        told = ", ".join(found) if len(found) < MANY_SHEETS else f"{found[0]} to {found[-1]}"
        return f"; pieces: sheet{'s' * (len(found) > 1)} {told}"

    def _labels(
        self, ident: str, view: StripView, limits: tuple[float, float], left: float
    ) -> list[Item]:
        """Return distances from the start and what is there, each under its place."""
        places = [view.x(view.held(self.developed.place(e.along)[0])) for e in self.events]
        xs = spread(places, LABEL_MM, limits[0] + 1.0, limits[1] - 1.0)
        top = view.floor + self.heights_mm[1] + FANS_MM
        lines: list[Path] = []
        items: list[Item] = []
        for i, (event, place, x) in enumerate(zip(self.events, places, xs, strict=True)):
            foot = view.floor + self.heights_mm[1] + 0.6
            lines.append(polyline((place, foot), (x, top - 0.8), width_mm=self._thin))
            texts = (
                Text(Point(x + TURNED_MM, top), metres(event.along), BODY, "end", turned=True),
                Text(
                    Point(x + TURNED_MM, top + DISTANCE_MM), event.words, BODY, "end", turned=True
                ),
            )
            name = f"{ident}:{event.kind}:{event.tag}:{i}"
            items.append(Item(name, "text", texts, title=f"{event.words}, {metres(event.along)} m"))
        items.append(Item(f"{ident}:fans", "dim", tuple(lines)))
        heads = ((top + BODY, "m from start"), (top + DISTANCE_MM + BODY, "What is there"))
        words = tuple(Text(Point(left, y), text, BODY) for y, text in heads)
        return [*items, Item(f"{ident}:row-names", "text", words)]

    @property
    def _thin(self) -> float:
        return widths_for(self.paper).narrow


def metres(along_mm: float) -> str:
    """Return a distance along a run in metres, to the centimetre."""
    return rounded(along_mm / 1000, 2)


def events_on(
    developed: DevelopedRun, part: StripPart, events: Sequence[RunEvent]
) -> tuple[RunEvent, ...]:
    """Return the events of a part; one that falls on a cut stands on the part it ends."""
    low, high = part.over
    found = []
    for event in events:
        over = developed.place(event.along)[0]
        begins = over > low + 1e-6 or part.number == 1
        if begins and over <= high + 1e-6:
            found.append(event)
    return tuple(found)
