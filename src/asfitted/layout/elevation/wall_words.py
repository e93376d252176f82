"""All words on a wall: those that matter most first, those without room as numbered keynotes."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.geometry import Box
from asfitted.layout.callout_choice import place_together
from asfitted.layout.elevation.run_drawing import piece_box
from asfitted.layout.elevation.run_tags import flag_corner, tag_run, tag_stretches
from asfitted.layout.elevation.runs_on_wall import cables_on
from asfitted.layout.elevation.stretch_drawing import on_sheet
from asfitted.layout.elevation.thing_drawing import thing_box
from asfitted.layout.elevation.wall_outline import opening_box, write_inside
from asfitted.layout.surveyed_ways import all_told

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.callout import Callout
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.references import References
    from asfitted.layout.elevation.runs_on_wall import CornerFlag
    from asfitted.layout.elevation.stretch_drawing import DrawnStretch
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_view import WallView

THING_WEIGHT = 6.0
BARE_COST = 70.0  # of a tag without its height
RINGS_REACH_MM = 120.0
ENOUGH_MM = 2.5  # of a line in a detail, on the paper of the view


@dataclass(frozen=True)
class WallCallouts:
    """Callouts of a wall by what they name: things, openings, what leaves the wall."""

    things: tuple[Callout, ...]
    openings: tuple[Callout, ...]
    leaving: tuple[Callout, ...]
    details: tuple[Callout, ...] = ()


@dataclass(frozen=True)
class LeftOver:
    """Words that do not stand beside their thing.

    ``bare`` are tags of things whose other words are missing, ``keynotes`` the words of each
    numbered ring from 1, ``unplaced`` the numbers that found no room for even a ring. ``targets``
    are the boxes on paper of what all these name, the bare ones first.
    """

    bare: tuple[str, ...] = ()
    keynotes: tuple[str, ...] = ()
    unplaced: tuple[str, ...] = ()
    targets: tuple[Box, ...] = ()


def write_words(
    drawing: Drawing,
    view: WallView,
    content: WallContent,
    results: CalculationResults,
    *,
    callouts: WallCallouts,
    refs: References,
    enlarged: Sequence[Box] = (),
) -> LeftOver:
    """Write corner flags, tags of things, runs and drops, then what needs a leader.

    What lies in an ``enlarged`` box of the view is told in a detail: only tags of things that have
    room right beside them stand here too.
    """
    flags = [f for f in content.flags if not _is_in(_corner_box(view, f), enlarged)]
    items, waiting = place_together(drawing.room, callouts.details)
    drawing.extend(items)
    waiting += _flag_corners(drawing, view, content, flags, refs)
    told, here = _parted(callouts.things, enlarged)
    items, far = place_together(drawing.room, _with_rivals(here), near_only=True)
    drawing.extend(items)
    waiting += [replace(c, rivals=(), other_lines=(*c.other_lines, (BARE_COST, ()))) for c in far]
    lengths = lengths_on_sheet(view, content)
    waiting += tag_stretches(drawing, [d for d in lengths if not _is_told(d.box, enlarged)])
    for piece in content.pieces:
        box = piece_box(view, piece)
        if _is_in(box, enlarged):
            continue
        kept = tag_run(drawing, piece, box, all_told(cables_on(results, piece), results))
        waiting += [kept] if kept else []
    seen = [seen for _, _, seen in content.openings]
    waiting += [
        callout
        for callout, opening in zip(callouts.openings, seen, strict=True)
        if not write_inside(drawing, callout, opening_box(view, opening))
    ]
    waiting += _parted(callouts.leaving, enlarged)[1]
    for opening in seen:
        drawing.room.take_poor(opening_box(view, opening))
    items, left = place_together(drawing.room, waiting)
    drawing.extend(items)
    bare = [replace(c, lines=(), other_lines=()) for c in _with_rivals(told)]
    items, _ = place_together(drawing.room, bare, near_only=True)
    drawing.extend(items)
    letters = {c.ident for c in callouts.details}
    here_only = [c for c in left if c.ident in letters or not _is_told(c.target, enlarged)]
    return _write_rest(drawing, here_only, here)


def _is_told(target: Box, enlarged: Sequence[Box]) -> bool:
    """Tell whether a detail shows a thing, or enough of a run or cable to name it there."""
    return _is_in(target, enlarged) or any(_shares(target, box) for box in enlarged)


def _corner_box(view: WallView, flag: CornerFlag) -> Box:
    """Return the place of a flag at its corner."""
    x, y = view.left if flag.side == "left" else view.right, view.y(flag.up_mm)
    return Box(x - 0.5, y - 0.5, x + 0.5, y + 0.5)


def _shares(target: Box, enlarged: Box) -> bool:
    """Tell whether a detail shows enough of a long run or cable to name it there."""
    across = min(target.x1, enlarged.x1) - max(target.x0, enlarged.x0)
    down = min(target.y1, enlarged.y1) - max(target.y0, enlarged.y0)
    return min(across, down) > 0 and max(across, down) > ENOUGH_MM


def _is_in(box: Box, enlarged: Sequence[Box]) -> bool:
    """Tell whether a box lies wholly in a part of the view that a detail shows."""
    return any(other.grown(0.6).holds(box) for other in enlarged)


def _parted(
    callouts: Sequence[Callout], enlarged: Sequence[Box]
) -> tuple[list[Callout], list[Callout]]:
    """Return the callouts of what a detail shows, and the others."""
    told = [c for c in callouts if _is_in(c.target, enlarged)]
    return told, [c for c in callouts if c not in told]


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


def _write_rest(drawing: Drawing, left: Sequence[Callout], things: Sequence[Callout]) -> LeftOver:
    """Write numbers in rings for what has no room, and say which things bear their tag alone."""
    rings = [replace(c, keynote=n, rivals=(), other_lines=()) for n, c in enumerate(left, start=1)]
    alone = {item.ident for item in drawing.items if len(item.parts) == 1}
    bare = [c for c in things if c.ident in alone and c.lines and c not in left]
    items, no_ring = place_together(drawing.room, rings, reach=RINGS_REACH_MM)
    drawing.extend(items)
    return LeftOver(
        tuple(c.ident.removeprefix("callout:") for c in bare),
        tuple(c.words for c in left),
        tuple(str(c.keynote) for c in no_ring),
        tuple(c.target for c in (*bare, *left)),
    )


def lengths_on_sheet(view: WallView, content: WallContent) -> tuple[DrawnStretch, ...]:
    """Return the drawn lengths of a wall, clear of the outlines of things they do not go to."""
    return on_sheet(view, content.stretches, [thing_box(view, t) for t in content.things])


def _flag_corners(
    drawing: Drawing,
    view: WallView,
    content: WallContent,
    flags: Sequence[CornerFlag],
    refs: References,
) -> list[Callout]:
    waiting = []
    for flag in flags:
        kept = flag_corner(
            drawing,
            flag,
            flag_box(view, content, flag),
            view_box=view.box.grown(-0.5),
            refs=refs,
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
