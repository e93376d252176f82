"""All words on a wall: those that matter most first, those without room as numbered keynotes."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.geometry import Box
from asfitted.layout.callout_choice import place_together
from asfitted.layout.elevation.run_drawing import piece_box
from asfitted.layout.elevation.run_tags import flag_corner, tag_run, tag_stretches
from asfitted.layout.elevation.runs_on_wall import cables_in
from asfitted.layout.elevation.stretch_drawing import on_sheet
from asfitted.layout.elevation.thing_drawing import thing_box
from asfitted.layout.elevation.wall_outline import opening_box, write_inside

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.callout import Callout
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.runs_on_wall import CornerFlag
    from asfitted.layout.elevation.stretch_drawing import DrawnStretch
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_view import WallView
    from asfitted.layout.sheet_model import Numbers

THING_WEIGHT = 6.0
BARE_COST = 70.0  # of a tag without its height
RINGS_REACH_MM = 120.0


@dataclass(frozen=True)
class WallCallouts:
    """Callouts of a wall by what they name: things, openings, what leaves the wall."""

    things: tuple[Callout, ...]
    openings: tuple[Callout, ...]
    leaving: tuple[Callout, ...]


@dataclass(frozen=True)
class LeftOver:
    """Words that do not stand beside their thing.

    ``bare`` are tags of things whose other words are missing, ``keynotes`` the words of each
    numbered ring from 1, ``unplaced`` words without even a ring.
    """

    bare: tuple[str, ...] = ()
    keynotes: tuple[str, ...] = ()
    unplaced: tuple[str, ...] = ()


def write_words(
    drawing: Drawing,
    view: WallView,
    content: WallContent,
    results: CalculationResults,
    *,
    callouts: WallCallouts,
    numbers: Numbers,
) -> LeftOver:
    """Write corner flags, tags of things, runs and drops, then what needs a leader."""
    waiting = _flag_corners(drawing, view, content, numbers)
    items, far = place_together(drawing.room, _with_rivals(callouts.things), near_only=True)
    drawing.extend(items)
    waiting += [replace(c, rivals=(), other_lines=(*c.other_lines, (BARE_COST, ()))) for c in far]
    waiting += tag_stretches(drawing, lengths_on_sheet(view, content))
    for piece in content.pieces:
        cables = cables_in(results, piece.run.tag, content.wall.name)
        kept = tag_run(drawing, piece, piece_box(view, piece), cables)
        waiting += [kept] if kept else []
    waiting += [
        callout
        for callout, opening in zip(callouts.openings, view.wall.openings, strict=True)
        if not write_inside(drawing, callout, opening_box(view, opening))
    ]
    waiting += callouts.leaving
    for opening in view.wall.openings:
        drawing.room.take_poor(opening_box(view, opening))
    items, left = place_together(drawing.room, waiting)
    drawing.extend(items)
    return _write_rest(drawing, left, [callout.ident for callout in callouts.things])


def _with_rivals(callouts: Sequence[Callout]) -> list[Callout]:
    """Return the callouts of things, each knowing the outlines of the others."""
    return [
        replace(
            callout,
            weight=THING_WEIGHT,
            rivals=tuple(o.target for o in callouts if o is not callout),
        )
        for callout in callouts
    ]


def _write_rest(drawing: Drawing, left: Sequence[Callout], things: Sequence[str]) -> LeftOver:
    """Write numbers in rings for what has no room, and say which things bear their tag alone."""
    rings = [replace(c, keynote=n, rivals=(), other_lines=()) for n, c in enumerate(left, start=1)]
    bare = tuple(
        item.ident.removeprefix("callout:")
        for item in drawing.items
        if item.ident in things and len(item.parts) == 1
    )
    items, no_ring = place_together(drawing.room, rings, reach=RINGS_REACH_MM)
    drawing.extend(items)
    return LeftOver(bare, tuple(c.words for c in left), tuple(c.words for c in no_ring))


def lengths_on_sheet(view: WallView, content: WallContent) -> tuple[DrawnStretch, ...]:
    """Return the drawn lengths of a wall, clear of the outlines of things they do not go to."""
    return on_sheet(view, content.stretches, [thing_box(view, t) for t in content.things])


def _flag_corners(
    drawing: Drawing, view: WallView, content: WallContent, numbers: Numbers
) -> list[Callout]:
    waiting = []
    for flag in content.flags:
        kept = flag_corner(
            drawing,
            flag,
            flag_box(view, content, flag),
            view_box=view.box.grown(-0.5),
            numbers=numbers,
            reach_mm=_flag_reach_mm(view, content, flag),
        )
        waiting += [kept] if kept else []
    return waiting


def flag_box(view: WallView, content: WallContent, flag: CornerFlag) -> Box:
    """Return the box of what a flag stands on: its piece of run, or its clipped cable."""
    x = view.left if flag.side == "left" else view.right
    for piece in content.pieces:
        if piece.run.tag == flag.tag:
            box = piece_box(view, piece)
            if box.x0 - 0.6 <= x <= box.x1 + 0.6:
                return box
    y = view.y(flag.up_mm)
    return Box(x - 1.0, y - 0.5, x + 1.0, y + 0.5)


def _flag_reach_mm(view: WallView, content: WallContent, flag: CornerFlag) -> float:
    """Return how far on paper the run or cable of a flag goes from its corner."""
    x = view.left if flag.side == "left" else view.right
    box = flag_box(view, content, flag)
    if box.width > 2.5:
        return box.width
    ends = [
        abs(view.x(end.along) - x)
        for s in content.stretches
        if flag.tag in s.cables and not s.is_upright and abs(s.start.up - flag.up_mm) < 1.0
        for end in (s.start, s.end)
    ]
    return max(ends, default=0.0)
