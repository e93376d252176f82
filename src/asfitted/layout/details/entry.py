"""The cable's way into an enclosure: gland or bush, cores fanned out to their columns, earth."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.lettering import BODY, fits, line_pitch_mm, wrap
from asfitted.layout.linework import polyline
from asfitted.layout.sheet_layout import Item
from asfitted.reference.connections import PROTECTIVE

if TYPE_CHECKING:
    from asfitted.layout.details.conductors import CableEnd
    from asfitted.layout.details.sketch import Sketch

PITCH = 16.0  # of conductors
FIRST_X = 36.0  # first conductor from the left edge of the figure
TOP_Y = 17.0
GLAND_MM = 16.0
GLAND_Y = 21.0
WALL_Y = GLAND_Y + 0.52 * GLAND_MM  # wall of the enclosure that the gland goes through
FAN_Y = GLAND_Y + 0.8 * GLAND_MM + 3.0
FAN_STEP = 2.5
COLOURS_Y = FAN_Y + 2 * FAN_STEP + 5.5
COLOURS_END_Y = COLOURS_Y + 4 * line_pitch_mm(BODY)
NAME_MM = PITCH - 2.6  # room for the colour words beside a conductor


def columns(end: CableEnd) -> dict[str, float]:
    """Return the x of every conductor of an end; the protective one comes last, always."""
    xs = {mark: FIRST_X + i * PITCH for i, mark in enumerate(end.live)}
    return {**xs, PROTECTIVE: FIRST_X + len(end.live) * PITCH}


def fly_lead_x(end: CableEnd) -> float:
    """Return the x of the lead from the earth tag, right of every core."""
    return columns(end)[PROTECTIVE] + PITCH * 0.75


def width_mm(live: int) -> float:
    """Return the width of a figure with so many live conductors."""
    return max(FIRST_X + (live + 0.75) * PITCH + 10.0, 104.0)


def draw_entry(sketch: Sketch, end: CableEnd, bar_y: float) -> None:
    """Draw cable, gland or bush, the cores fanned out, and the fly lead down to the earth bar.

    Cores end at ``COLOURS_END_Y`` in their columns; the protective core ends at the bar.
    """
    xs = columns(end)
    cores = [m for m in xs if m != PROTECTIVE or end.has_earth_core]
    middle = sum(xs[m] for m in end.live) / len(end.live)
    armoured = end.construction == "armoured"
    _cable(sketch, end, middle, armoured=armoured)
    start_y = GLAND_Y + (0.8 if armoured else 0.66) * GLAND_MM
    starts = {m: middle + (i - (len(cores) - 1) / 2) * 1.7 for i, m in enumerate(cores)}
    levels = _levels(starts, xs)
    for mark in cores:
        end_y = bar_y if mark == PROTECTIVE else COLOURS_END_Y
        x0, x1, level = starts[mark], xs[mark], levels[mark]
        bends = ((x0, start_y), (x0, level), (x1, level), (x1, end_y))
        straight = ((x0, start_y), (x0, end_y))
        sketch.wire(f"{mark}:in", f"{mark}:in", *(straight if abs(x0 - x1) < 0.01 else bends))
    if armoured:
        _fly_lead(sketch, middle + GLAND_MM / 2, fly_lead_x(end), bar_y)
    draw_colours(sketch, end, xs, COLOURS_Y)


def _fly_lead(sketch: Sketch, tag_x: float, x: float, bar_y: float) -> None:
    """Draw the lead from the earth tag to the earth bar, with its name under it."""
    y = GLAND_Y + 0.58 * GLAND_MM
    sketch.wire("fly-lead", f"{PROTECTIVE}:in", (tag_x, y), (x, y), (x, bar_y))
    said = "earth tag, fly lead"
    if not fits(said, x - tag_x - 4.0, BODY):
        said = "fly lead"
    sketch.words("fly-lead:words", said, tag_x + 1.5, y + 3.6)


def _levels(starts: dict[str, float], xs: dict[str, float]) -> dict[str, float]:
    """Return the height at which each core turns aside, so that none crosses another."""
    left = [m for m in starts if xs[m] < starts[m] - 0.01]
    right = [m for m in reversed(list(starts)) if xs[m] > starts[m] + 0.01]
    found = dict.fromkeys(starts, FAN_Y)
    for side in (left, right):
        for i, mark in enumerate(side):
            found[mark] = FAN_Y + i * FAN_STEP
    return found


def _cable(sketch: Sketch, end: CableEnd, x: float, *, armoured: bool) -> None:
    """Draw the incoming cable with its broken end, and the gland or bush."""
    sketch.items.append(_broken_end(sketch, x))
    sketch.wire("cable", "cable", (x, TOP_Y + 1.0), (x, GLAND_Y), title="cable")
    half = GLAND_MM / 2
    if armoured:
        sketch.sign("gland", "gland", x - half, GLAND_Y, GLAND_MM)
    else:
        sketch.sign("entry", "bushed_entry", x - half, GLAND_Y, GLAND_MM)
    room = width_mm(len(end.live)) - x - 5.0
    lines = wrap(f"{end.words}, {end.earth_words}", room, BODY)
    sketch.words("cable:words", lines, x + 4.0, TOP_Y + 0.6)


def _broken_end(sketch: Sketch, x: float) -> Item:
    """Return the zigzag across a cable that goes on."""
    points = [(x - 3, TOP_Y + 1), (x - 0.8, TOP_Y + 1), (x - 0.4, TOP_Y), (x + 0.4, TOP_Y + 2)]
    points += [(x + 0.8, TOP_Y + 1), (x + 3, TOP_Y + 1)]
    placed = [(sketch.at.x + px, sketch.at.y + py) for px, py in points]
    path = polyline(*placed, width_mm=sketch.widths.narrow)
    return Item(f"{sketch.key}:cable:goes-on", "flag", (path,))


def draw_colours(sketch: Sketch, end: CableEnd, xs: dict[str, float], y: float) -> None:
    """Draw the colour of each core left of its conductor, on up to four lines."""
    for mark, colour in end.colours.items():
        if mark not in xs:
            continue
        said = colour.replace("green-and-yellow", "green/ yellow")
        lines = [line.replace("/ ", "/") for line in wrap(said, NAME_MM, BODY)]
        sketch.words(f"{mark}:colour:{y:.0f}", lines, xs[mark] - 1.3, y, anchor="end")
