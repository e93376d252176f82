"""The wall itself with everything on it: lines first, then words where there is room for them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.callout import LEADER_COST, Callout
from asfitted.layout.drawing import Drawing
from asfitted.layout.elevation.dimension_chain import chain_height_mm, draw_dimensions, marks_of
from asfitted.layout.elevation.level_ladder import draw_ladder, ladder_width_mm, levels_of
from asfitted.layout.elevation.run_drawing import (
    draw_corner_arrow,
    draw_crossing,
    draw_declared_end,
    draw_runs,
    draw_through_wall,
    is_widened,
    piece_box,
)
from asfitted.layout.elevation.run_tags import (
    crossing_callout,
    declared_callout,
    words_at_things,
)
from asfitted.layout.elevation.runs_on_wall import cables_of_run
from asfitted.layout.elevation.stretch_drawing import Outlines, draw_stretches
from asfitted.layout.elevation.thing_drawing import draw_things, thing_box
from asfitted.layout.elevation.view_title import draw_view_title, title_height_mm
from asfitted.layout.elevation.wall_outline import (
    draw_openings,
    draw_outline,
)
from asfitted.layout.elevation.wall_view import WallView
from asfitted.layout.elevation.wall_words import (
    WallCallouts,
    flag_box,
    lengths_on_sheet,
    write_words,
)
from asfitted.layout.free_room import FreeRoom

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.dimension_chain import Mark
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_words import LeftOver
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Numbers

RIGHT_MM = 8.0  # room for corner arrows right of the wall
MISSING_COST = 60.0
BAND_MM = 11.0  # above the ceiling line: corner folds and their names


@dataclass(frozen=True)
class WallDrawing:
    """A drawn wall: its items, the box it fills, and what is not written beside its thing."""

    items: tuple[Item, ...]
    box: Box
    view: WallView
    widened: bool
    left_over: LeftOver
    band_mm: float

    @property
    def cost(self) -> float:
        """How good the words stand: length of leaders, mm, and much for each that has no place."""
        ends = [p.points for i in self.items if i.ident.endswith(":leader") for p in i.parts]  # type: ignore[union-attr]
        left = self.left_over
        missing = len(left.bare) + 3 * len(left.keynotes) + 5 * len(left.unplaced)
        return sum(LEADER_COST + math.dist(*pair) for pair in ends) + MISSING_COST * missing


@dataclass(frozen=True)
class Need:
    """The room in mm that a wall needs on the sheet at a scale."""

    left: float
    width: float
    above: float
    height: float


def marks_on(content: WallContent) -> tuple[Mark, ...]:
    """Return the points that are dimensioned on a wall."""
    others = [(c.at.along, c.run.tag) for c in content.crossings]
    others += [(d.at.along, d.run.tag) for d in content.declared]
    others += [
        (s.start.along, " ".join(s.cables)) for s in content.stretches if s.way == "off-wall"
    ]
    return marks_of(content.wall, content.things, content.pieces, others)


def need_of(content: WallContent, scale: int, band_mm: float = BAND_MM) -> Need:
    """Return the room that a wall with ladder, dimensions and title needs."""
    view = WallView(content.wall, scale, 0.0, 0.0)
    levels = levels_of(content.wall, content.pieces, content.things)
    left = ladder_width_mm(levels)
    width = left + view.mm(content.wall.length_mm) + RIGHT_MM
    below = chain_height_mm(marks_on(content)) + title_height_mm(view, content.room)
    return Need(left, width, band_mm, band_mm + view.mm(content.wall.height_mm) + below)


def draw_wall(
    content: WallContent,
    results: CalculationResults,
    numbers: Numbers,
    *,
    scale: int,
    corner: Point,
    band_mm: float = BAND_MM,
) -> WallDrawing:
    """Draw a wall with its upper left corner (ladder and band included) at a place on the sheet."""
    need = need_of(content, scale, band_mm)
    floor = corner.y + band_mm + content.wall.height_mm / scale
    view = WallView(content.wall, scale, corner.x + need.left, floor)
    box = Box(corner.x, corner.y, corner.x + need.width, corner.y + need.height)
    limits = Box(view.left + 0.6, box.y0, view.right - 0.6, view.floor - 0.6)
    drawing = Drawing(FreeRoom(limits))
    draw_outline(drawing, view, content.previous)
    openings = draw_openings(drawing, view)
    leaving = _draw_services(drawing, view, content, results, numbers)
    draw_ladder(drawing, view, levels_of(content.wall, content.pieces, content.things))
    draw_dimensions(drawing, view, marks_on(content))
    more = words_at_things(lengths_on_sheet(view, content))
    things = draw_things(drawing, view, content.things, more)
    callouts = WallCallouts(tuple(things), tuple(openings), tuple(leaving))
    left = write_words(drawing, view, content, results, callouts=callouts, numbers=numbers)
    title_end = draw_view_title(drawing, view, content.room, box.y1)
    box = Box(box.x0, box.y0, max(box.x1, title_end), box.y1)
    widened = any(is_widened(view, piece) for piece in content.pieces)
    return WallDrawing(tuple(drawing.items), box, view, widened, left, band_mm)


def _draw_services(
    drawing: Drawing,
    view: WallView,
    content: WallContent,
    results: CalculationResults,
    numbers: Numbers,
) -> list[Callout]:
    """Draw drops, then containment in front of them, then what leaves the wall."""
    outlines = Outlines(
        (
            *(thing_box(view, t) for t in content.things),
            *(piece_box(view, p) for p in content.pieces),
        )
    )
    draw_stretches(drawing, lengths_on_sheet(view, content), outlines)
    draw_runs(drawing, view, content.pieces)
    waiting = [
        crossing_callout(crossing, draw_crossing(drawing, view, crossing), numbers)
        for crossing in content.crossings
    ]
    for end in content.declared:
        cables = cables_of_run(results, end.run.tag)
        waiting.append(declared_callout(end, cables, draw_declared_end(drawing, view, end)))
    waiting += _draw_marks(drawing, view, content)
    for flag in content.flags:
        draw_corner_arrow(drawing, view, flag, flag_box(view, content, flag))
    return waiting


def _draw_marks(drawing: Drawing, view: WallView, content: WallContent) -> list[Callout]:
    """Draw where cables pass through the wall or leave it into the room, one mark for a place.

    A mark in the outline of a thing needs no words: the cable goes to that thing.
    """
    places: dict[tuple[int, int, str], list[str]] = {}
    serves: dict[tuple[int, int, str], list[str]] = {}
    for s in content.stretches:
        if s.way in ("through-wall", "off-wall"):
            place = (round(s.start.along), round(s.start.up), s.way)
            places.setdefault(place, []).extend(s.cables)
            serves.setdefault(place, []).append(s.serves)
    callouts = []
    for (along, up, way), cables in places.items():
        ident = f"{way}:{along}:{up}"
        box = draw_through_wall(drawing, ident, view.at(along, up))
        outlines = [thing_box(view, t) for t in content.things]
        outlines += [view.centred(d.at.along, d.at.up, 100.0, 100.0) for d in content.declared]
        if any(outline.holds(box) or outline.meets(box) for outline in outlines):
            continue
        words = "through wall" if way == "through-wall" else "off the wall"
        names = " ".join(dict.fromkeys(cables))
        to = " ".join(dict.fromkeys(serves[along, up, way]))
        lines = (f"{names} to {to}", f"{words} +{up}")
        callouts.append(Callout(f"{ident}:words", "", lines, box))
    return callouts
