"""Outlines of boards, points, cabinet and devices at true size and place, with their callouts."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.callout import Callout, callout_size
from asfitted.layout.elevation.removed import hatching, strike
from asfitted.layout.lettering import BODY, TAG, box_of, line_pitch_mm
from asfitted.layout.linework import rectangle, widths_for
from asfitted.layout.sheet_layout import Item, Path, SymbolUse, Text
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.things_on_wall import Thing
    from asfitted.layout.elevation.wall_view import WallView
    from asfitted.layout.sheet_layout import Tone

W = widths_for("A3")
LEAST_SIDE_MM = 2.0
SHORT_COST = 8.0  # of leaving out that a dashed thing is outside
LEAST_SYMBOL_MM = 7.0
#: Symbols that hold no letters, so that they can be drawn smaller than 10 mm.
UNLETTERED = frozenset(
    {
        "isolator_enclosed",
        "direct_on_line_starter",
        "socket_three_phase",
        "socket_three_phase_rcd",
        "socket",
        "camera_fixed",
        "junction_box",
        "heater",
        "fan",
        "luminaire",
        "floodlight",
        "fused_spur",
    }
)


def thing_box(view: WallView, thing: Thing) -> Box:
    """Return the outline of a thing on the sheet: true size, but never under 2 mm.

    What would reach out past the sides of the view ends there.
    """
    width = max(thing.width_mm, LEAST_SIDE_MM * view.scale)
    height = max(thing.height_mm, LEAST_SIDE_MM * view.scale)
    box, outer = view.centred(thing.at.along, thing.at.up, width, height), view.box
    if outer.holds(box):
        return box
    x0, x1 = _within(box.x0, box.x1, outer.x0, outer.x1)
    y0, y1 = _within(box.y0, box.y1, outer.y0, outer.y1)
    return Box(x0, y0, x1, y1)


def _within(low: float, high: float, least: float, most: float) -> tuple[float, float]:
    """Return the part of a span between two limits, moved between them where it is too little."""
    a, b = max(low, least), min(high, most)
    if b - a >= LEAST_SIDE_MM:
        return a, b
    a = min(max(a, least), most - LEAST_SIDE_MM)
    return a, a + LEAST_SIDE_MM


def draw_things(
    drawing: Drawing,
    view: WallView,
    things: Sequence[Thing],
    more: Mapping[str, tuple[str, ...]],
    links: Mapping[str, str],
    *,
    seen_from_outside: bool = False,
    boundaries: Sequence[Box] = (),
) -> list[Callout]:
    """Draw outlines with a symbol or words inside where they fit; return callouts for the rest.

    ``more`` holds further lines for the callouts of some things, and ``links`` where they lead,
    by tag. No words stand where one of the ``boundaries`` of details runs.
    """
    callouts = []
    boxes = {thing.tag: thing_box(view, thing) for thing in things}
    for thing in things:
        box = boxes[thing.tag]
        is_alone = not any(o.meets(box) for tag, o in boxes.items() if tag != thing.tag)
        outline = _outline(thing, box, seen_from_outside=seen_from_outside)
        title, link = thing.title or thing.words, links.get(thing.tag, "")
        drawing.draw(f"thing:{thing.tag}", "outline", *outline, title=title, link=link)
        drawing.room.take_solid(box)
        callout = _callout(thing, more.get(thing.tag, ()), box)
        inside = _words_inside(callout, box)
        if inside and is_alone and not _is_cut(inside, boundaries):
            if thing.state is State.REMOVED:
                drawing.draw(f"{callout.ident}:clear", "outline", _paint_behind(inside))
            drawing.add(Item(callout.ident, "text", inside))
            continue
        symbol = _symbol_inside(thing, box, seen_from_outside=seen_from_outside)
        if symbol and is_alone:
            drawing.draw(f"symbol:{thing.tag}", "symbol", symbol, title=title, link=link)
        callouts.append(replace(callout, link=link))
    return callouts


def _callout(thing: Thing, more: tuple[str, ...], box: Box) -> Callout:
    """Return what is written about a thing; its state and face may share a line."""
    height, *tail = thing.lines
    ident = f"callout:{thing.tag}"
    if thing.group == "cabinet" or not tail:
        return Callout(ident, thing.tag, (*thing.lines, *more), box)
    together = ", ".join(tail)
    others = [(0.0, (height, *tail)), (0.0, (f"{height}, {together}",))]
    if thing.state is State.NEW:  # its dashed outline says that it is outside
        others.append((SHORT_COST, (height,)))
    other_lines = tuple((cost, (*lines, *more)) for cost, lines in others if len(lines) != 2)
    return Callout(ident, thing.tag, (height, together, *more), box, other_lines=other_lines)


def _outline(thing: Thing, box: Box, *, seen_from_outside: bool) -> list[Path]:
    """Return the outline: wide when new, narrow when existing, dashed when on the other face."""
    is_behind = thing.is_outside and not seen_from_outside
    width = W.narrow if thing.state is not State.NEW or is_behind else W.wide
    pattern = "dashed" if is_behind else "continuous"
    fill: Tone | None = None if is_behind else "white"
    lines = [rectangle(box, width_mm=width, pattern=pattern, fill=fill)]  # type: ignore[arg-type]
    if thing.state is State.REMOVED:
        lines += [*hatching(box), *strike(box)]
    return lines


def _words_inside(callout: Callout, box: Box) -> tuple[Text, ...]:
    """Return the callout's words centred in the outline, or nothing when it is too small."""
    width, height = callout_size(callout)
    if width + 2.6 > box.width or height + 2.6 > box.height:
        return ()
    middle = box.centre
    y = middle.y - height / 2 + TAG
    texts = [Text(Point(middle.x, y), callout.tag, TAG, anchor="middle", bold=True)]
    for line in callout.lines:
        y += line_pitch_mm(BODY)
        texts.append(Text(Point(middle.x, y), line, BODY, anchor="middle"))
    inner = box.grown(-0.7)
    return tuple(texts) if all(inner.holds(box_of(t)) for t in texts) else ()


def _is_cut(texts: Sequence[Text], boundaries: Sequence[Box]) -> bool:
    """Tell whether the line round a detail runs through words."""
    boxes = [box_of(text).grown(0.4) for text in texts]
    return any(line.meets(box) and not line.holds(box) for line in boundaries for box in boxes)


def _paint_behind(texts: tuple[Text, ...]) -> Path:
    """Return white paint behind words, so that no hatching runs through them."""
    first, *others = (box_of(text) for text in texts)
    for other in others:
        first = first.joined(other)
    return rectangle(first.grown(0.6), width_mm=None, fill="white")


def _symbol_inside(thing: Thing, box: Box, *, seen_from_outside: bool) -> SymbolUse | None:
    """Return the symbol in the middle of the outline, where it is big enough to hold one."""
    side = min(box.width, box.height, 10.0) - 1.0
    if thing.symbol not in UNLETTERED or side < LEAST_SYMBOL_MM:
        return None
    if thing.state is State.REMOVED or (thing.is_outside and not seen_from_outside):
        return None
    at = box.centre.moved(-side / 2, -side / 2)
    return SymbolUse(thing.symbol, at, side, width_mm=0.35 if side >= 9 else 0.25)
