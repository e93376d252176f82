"""Containment on the elevation: two edges at true scale, cross-sections, arrows at corners."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.elevation.removed import hatching, strike
from asfitted.layout.given_words import state_behind
from asfitted.layout.linework import polyline, rectangle, widths_for
from asfitted.layout.sheet_layout import Circle, Path, Stroke
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.passages_on_wall import WallPassage
    from asfitted.layout.elevation.runs_on_wall import (
        CornerFlag,
        Crossing,
        DeclaredEnd,
        RunPiece,
    )
    from asfitted.layout.elevation.wall_view import WallView

W = widths_for("A3")
LEAST_MM = 1.25  # the two edges keep 0.75 mm of paper between them
BREAK_MM = 1.0  # clear gap each side of a run that passes in front of something
ARROW_MM = 3.2
RUN_INK = 20.0  # what a leader pays to cross a run: almost as much as having no place


def piece_box(view: WallView, piece: RunPiece) -> Box:
    """Return the box of a piece of run on the sheet, at least 1.25 mm across."""
    across = max(view.mm(piece.shown_mm), LEAST_MM)
    share = piece.below_mm / piece.shown_mm if piece.shown_mm else 0.5
    if piece.is_level:
        y = view.y(piece.start.up)
        return Box(
            view.x(piece.start.along),
            y - across * (1 - share),
            view.x(piece.end.along),
            y + across * share,
        )
    x = view.x(piece.start.along)
    return Box(x - across / 2, view.y(piece.end.up), x + across / 2, view.y(piece.start.up))


def is_widened(view: WallView, piece: RunPiece) -> bool:
    """Tell whether a piece had to be drawn wider than it is."""
    return view.mm(piece.shown_mm) < LEAST_MM - 1e-9


def draw_runs(drawing: Drawing, view: WallView, pieces: Sequence[RunPiece]) -> None:
    """Draw pieces of containment, tinted, over a break in what passes behind them."""
    for piece in pieces:
        box = piece_box(view, piece)
        width = W.wide if piece.run.state is State.NEW else W.narrow
        halo = (
            Box(box.x0, box.y0 - BREAK_MM, box.x1, box.y1 + BREAK_MM)
            if piece.is_level
            else Box(box.x0 - BREAK_MM, box.y0, box.x1 + BREAK_MM, box.y1)
        )
        drawing.draw(
            f"run:{piece.run.tag}:{piece.index}",
            "outline",
            rectangle(halo, width_mm=None, fill="white"),
            rectangle(box, width_mm=None, fill="tint"),
            *_edges(view, piece, box, width),
            title=f"{piece.run.tag} {piece.run.words} {piece.level}{state_behind(piece.run.state)}",
        )
        drawing.room.take_ink(box, RUN_INK)


def _edges(view: WallView, piece: RunPiece, box: Box, width: float) -> list[Path]:
    """Return the two long edges of a piece and its ends; an end cut by the view stays open."""
    more = [*hatching(box), *strike(box)] if piece.run.state is State.REMOVED else []
    window = view.shown
    low, high = window.from_mm, window.to_mm
    is_open = (window.left.kind != "corner", window.right.kind != "corner")
    if piece.is_level:
        ends = [is_open[0] and piece.start.along <= low, is_open[1] and piece.end.along >= high]
        sides = [((box.x0, y), (box.x1, y)) for y in (box.y0, box.y1)]
        caps = [((x, box.y0), (x, box.y1)) for x in (box.x0, box.x1)]
    else:
        is_cut = window.is_detail
        ends = [
            is_cut and piece.end.up >= window.high_mm,
            is_cut and piece.start.up <= window.low_mm,
        ]
        sides = [((x, box.y0), (x, box.y1)) for x in (box.x0, box.x1)]
        caps = [((box.x0, y), (box.x1, y)) for y in (box.y0, box.y1)]
    if not any(ends):
        return [rectangle(box, width_mm=width), *more]
    lines = [*sides, *(cap for cap, open_ in zip(caps, ends, strict=True) if not open_)]
    return [*(polyline(a, b, width_mm=width) for a, b in lines), *more]


def draw_corner_arrow(drawing: Drawing, view: WallView, flag: CornerFlag, box: Box) -> Box:
    """Draw the arrow of a run that goes on round the corner, outside the wall; return its box."""
    tip = ARROW_MM if flag.side == "right" else -ARROW_MM
    x = (view.right if flag.side == "right" else view.left) + (
        0.9 if flag.side == "right" else -0.9
    )
    y = (box.y0 + box.y1) / 2
    head = Path(
        (Point(x, y - 1.4), Point(x + tip, y), Point(x, y + 1.4)),
        Stroke(W.narrow),
        closed=True,
        fill="black",
    )
    drawing.draw(
        f"corner:{flag.side}:{flag.tag}:{round(flag.up_mm)}",
        "flag",
        head,
        title=f"{flag.tag} goes on to wall {flag.to_name or flag.to}",
    )
    return Box(min(x, x + tip), y - 1.4, max(x, x + tip), y + 1.4)


def draw_crossing(drawing: Drawing, view: WallView, crossing: Crossing) -> Box:
    """Draw the cross-section of a run that leaves the wall overhead; return its box."""
    run = crossing.run
    width = max(view.mm(run.width_mm), 2.5)
    height = max(view.mm(run.height_mm), LEAST_MM)
    share = {"T/O": 1.0, "U/S": 0.0, "C/L": 0.5}[run.level_of]
    x, y = view.x(crossing.at.along), view.y(crossing.at.up)
    x = min(max(x, view.left + width / 2 + 0.6), view.right - width / 2 - 0.6)
    box = Box(x - width / 2, y - height * (1 - share), x + width / 2, y + height * share)
    drawing.draw(
        f"crossing:{run.tag}:{round(crossing.at.along)}",
        "outline",
        rectangle(box.grown(0.8), width_mm=None, fill="white"),
        rectangle(box, width_mm=W.wide, fill="black"),
        title=f"{run.tag} in cross-section",
    )
    return box


def draw_declared_end(drawing: Drawing, view: WallView, end: DeclaredEnd) -> Box:
    """Draw the mouth of a declared length on the outer face; return its box."""
    size = max(view.mm(end.run.width_mm), 2.5)
    x, y = view.x(end.at.along), view.y(end.at.up)
    box = Box(x - size / 2, y - size / 2, x + size / 2, y + size / 2)
    drawing.draw(
        f"declared:{end.run.tag}",
        "outline",
        Path(
            (
                Point(box.x0, box.y0),
                Point(box.x1, box.y0),
                Point(box.x1, box.y1),
                Point(box.x0, box.y1),
            ),
            Stroke(W.narrow, "dashed"),
            closed=True,
            fill="white",
        ),
        polyline((box.x0, box.y0), (box.x1, box.y1), width_mm=W.narrow),
        polyline((box.x1, box.y0), (box.x0, box.y1), width_mm=W.narrow),
    )
    return box


def draw_passage(drawing: Drawing, view: WallView, passage: WallPassage) -> Box:
    """Draw an opening through the wall, or the foot of a way through floor or ceiling."""
    across = max(view.mm(passage.width_mm), 2.5)
    up = max(view.mm(passage.height_mm), 2.5)
    at = view.at(passage.at.along, passage.at.up)
    x = min(max(at.x, view.left + across / 2 + 0.8), view.right - across / 2 - 0.8)
    y = min(max(at.y, view.ceiling + up / 2 + 0.8), view.foot - up / 2 - 0.8)
    box = Box(x - across / 2, y - up / 2, x + across / 2, y + up / 2)
    parts = [rectangle(box, width_mm=W.wide, fill="white")]
    if passage.through == "wall":
        parts.append(polyline((box.x0, box.y1), (box.x1, box.y0), width_mm=W.narrow))
    else:
        is_down = view.foot - y < y - view.ceiling
        tip = Point(x, box.y1 - 0.5 if is_down else box.y0 + 0.5)
        base = box.y0 + 0.7 if is_down else box.y1 - 0.7
        head = (tip, Point(x - 0.9, base), Point(x + 0.9, base))
        parts.append(Path(head, None, closed=True, fill="black"))
    drawing.draw(f"passage:{passage.tag}", "outline", *parts, title=passage.title)
    drawing.room.take_solid(box)
    return box


def draw_through_wall(drawing: Drawing, ident: str, at: Point) -> Box:
    """Draw the mark of a cable that passes through or leaves the wall; return its box."""
    ring = Circle(at, 1.0, Stroke(W.narrow), fill="white")
    dot = Circle(at, 0.35, None, fill="black")
    drawing.draw(ident, "outline", ring, dot)
    return Box(at.x - 1.0, at.y - 1.0, at.x + 1.0, at.y + 1.0)
