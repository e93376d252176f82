"""The wall itself with everything on it: lines first, then words where there is room for them.

A wall is drawn from its upper left corner at (0, 0), so that it comes out the same wherever it
stands on its sheet; ``moved`` puts it there.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.callout import LEADER_COST
from asfitted.layout.drawing import Drawing
from asfitted.layout.elevation.detail_marks import detail_callouts, draw_boundaries
from asfitted.layout.elevation.dimension_chain import (
    chain_height_mm,
    draw_dimensions,
    marks_of,
    written_marks,
)
from asfitted.layout.elevation.level_ladder import draw_ladder, ladder_width_mm, levels_of
from asfitted.layout.elevation.moved_items import moved_items
from asfitted.layout.elevation.run_drawing import is_widened, piece_box
from asfitted.layout.elevation.run_tags import words_at_things
from asfitted.layout.elevation.services_drawing import draw_services
from asfitted.layout.elevation.stretch_drawing import Outlines, draw_stretches
from asfitted.layout.elevation.thing_drawing import draw_things, thing_box
from asfitted.layout.elevation.view_title import draw_view_title, title_of
from asfitted.layout.elevation.wall_outline import (
    band_mm,
    draw_openings,
    draw_outline,
    side_overhang_mm,
)
from asfitted.layout.elevation.wall_view import WallView
from asfitted.layout.elevation.wall_words import (
    WallCallouts,
    lengths_on_sheet,
    write_words,
)
from asfitted.layout.free_room import FreeRoom

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.detail_marks import DetailMark
    from asfitted.layout.elevation.dimension_chain import Mark
    from asfitted.layout.elevation.level_ladder import Level
    from asfitted.layout.elevation.references import References
    from asfitted.layout.elevation.things_on_wall import Thing
    from asfitted.layout.elevation.view_title import ViewTitle
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_words import LeftOver
    from asfitted.layout.sheet_layout import Item, Paper

LADDER_MORE_MM = 8.0  # the words of the levels may be so much longer than the view is high
RIGHT_MM = 6.0  # room for corner arrows right of the wall
MISSING_COST = 60.0


@dataclass(frozen=True)
class Frame:
    """How a view is drawn: its scale, paper, room over the ceiling, and what details show of it."""

    scale: int
    paper: Paper
    band_mm: float
    most_mm: float  # greatest width of its title
    details: tuple[DetailMark, ...] = ()


@dataclass(frozen=True)
class WallDrawing:
    """A drawn wall: its items, the box it fills, and what is not written beside its thing."""

    items: tuple[Item, ...]
    box: Box
    view: WallView
    widened: bool
    left_over: LeftOver
    not_dimensioned: tuple[Mark, ...]

    @property
    def cost(self) -> float:
        """How good the words stand: length of leaders, mm, and much for each that has no place."""
        ends = [p.points for i in self.items if i.ident.endswith(":leader") for p in i.parts]  # type: ignore[union-attr]
        left = self.left_over
        missing = len(left.bare) + 3 * len(left.keynotes) + 5 * len(left.unplaced)
        return sum(LEADER_COST + math.dist(*pair[-2:]) for pair in ends) + MISSING_COST * missing

    def moved(self, at: Point, prefix: str = "") -> WallDrawing:
        """Return the wall with its upper left corner at a place, idents begun with a prefix."""
        box = self.box
        view = replace(self.view, left=self.view.left + at.x, floor=self.view.floor + at.y)
        return replace(
            self,
            items=moved_items(self.items, at.x, at.y, prefix),
            box=Box(box.x0 + at.x, box.y0 + at.y, box.x1 + at.x, box.y1 + at.y),
            view=view,
        )


@dataclass(frozen=True)
class Need:
    """The room in mm that a wall needs on the sheet."""

    left: float
    width: float
    height: float
    title: ViewTitle


def marks_on(content: WallContent, details: Sequence[DetailMark] = ()) -> tuple[Mark, ...]:
    """Return the points dimensioned on a view; what a detail shows is dimensioned there."""
    others = [(c.at.along, c.run.tag) for c in content.crossings]
    others += [(d.at.along, d.run.tag) for d in content.declared]
    others += [(p.at.along, p.tag) for p in content.passages]
    others += [
        (s.start.along, " ".join(s.cables)) for s in content.stretches if s.way == "off-wall"
    ]
    things = [
        t
        for t in content.things
        if not any(d.window.holds(t.at) for d in details)
        and not (t.is_outside and content.outside_key)
    ]
    openings = [opening for _, opening, _ in content.openings]
    return marks_of(content.window, things, content.pieces, openings, others)


def need_of(content: WallContent, frame: Frame) -> Need:
    """Return the room that a wall with ladder, dimensions and title needs."""
    view = WallView(content.wall, frame.scale, 0.0, 0.0, content.window)
    over = side_overhang_mm(content, frame.scale)
    left = max(ladder_width_mm(_levels(content, view)), over[0])
    title = title_of(content, view, frame.paper, frame.most_mm)
    wide = left + view.mm(content.window.length_mm) + max(RIGHT_MM, over[1])
    # the title starts under the wall; a wide one goes out under the ladder, too
    width = max(wide, title.width_mm)
    marks = written_marks(marks_on(content, frame.details), view.mm(content.window.length_mm))
    below = chain_height_mm(marks) + title.height_mm
    height = frame.band_mm + view.mm(content.window.height_mm) + below
    return Need(left, width, height, title)


def base_band_mm(content: WallContent, scale: int) -> float:
    """Return the least room over the ceiling line."""
    return band_mm(content, scale)


def _levels(content: WallContent, view: WallView) -> tuple[Level, ...]:
    room = view.mm(content.window.height_mm) + LADDER_MORE_MM
    return levels_of(view, content.pieces, content.things, room_mm=room)


def draw_wall(
    content: WallContent,
    results: CalculationResults,
    refs: References,
    frame: Frame,
    links: Mapping[str, str],
) -> WallDrawing:
    """Draw a wall with its upper left corner (ladder and band included) at (0, 0)."""
    need = need_of(content, frame)
    floor = frame.band_mm + content.window.high_mm / frame.scale
    view = WallView(content.wall, frame.scale, need.left, floor, content.window)
    box = Box(0.0, 0.0, need.width, need.height)
    drawing = Drawing(FreeRoom(Box(view.left + 0.6, 0.0, view.right - 0.6, view.foot - 0.6)))
    draw_outline(drawing, view, content, refs)
    openings = draw_openings(drawing, view, content)
    is_outside = content.face == "outside"
    outlines = Outlines(
        (
            *(thing_box(view, t) for t in content.things),
            *(piece_box(view, p) for p in content.pieces),
        )
    )
    lengths = lengths_on_sheet(view, content)
    draw_stretches(drawing, lengths, outlines, seen_from_outside=is_outside)
    leaving = draw_services(drawing, view, content, results, refs)
    draw_ladder(drawing, view, _levels(content, view))
    marks = marks_on(content, frame.details)
    written = draw_dimensions(drawing, view, marks)
    shown = things_as_shown(content, refs)
    more = words_at_things(lengths)
    things = draw_things(
        drawing,
        view,
        shown,
        more,
        links,
        seen_from_outside=is_outside,
        boundaries=[detail.box_on(view) for detail in frame.details],
    )
    enlarged = draw_boundaries(drawing, view, frame.details)
    callouts = WallCallouts(
        tuple(things), tuple(openings), tuple(leaving), detail_callouts(view, frame.details, refs)
    )
    left = write_words(
        drawing, view, content, results, callouts=callouts, refs=refs, enlarged=enlarged
    )
    x = need.left if need.left + need.title.width_mm <= need.width else 0.0
    draw_view_title(drawing, view, need.title, Point(x, need.height), frame.paper)
    widened = any(is_widened(view, piece) for piece in content.pieces)
    missing = tuple(m for m in marks if m not in written)
    return WallDrawing(tuple(drawing.items), box, view, widened, left, missing)


def things_as_shown(content: WallContent, refs: References) -> tuple[Thing, ...]:
    """Return the things of a view with their words: those of the other face name its sheet."""
    if content.face == "outside":
        return tuple(
            replace(t, lines=tuple(w for w in t.lines if w != "outside face"))
            for t in content.things
        )
    if not content.outside_key:
        return content.things
    sheet = refs.sheet(content.outside_key)
    words = f"outside, sheet {sheet}" if sheet else "outside face"
    return tuple(replace(t, lines=(words,)) if t.is_outside else t for t in content.things)
