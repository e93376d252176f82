"""Title of an elevation below it, its scale, and the scale bar that stays true when resized."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.frame import usable_box
from asfitted.layout.lettering import BODY, VIEW, text_item
from asfitted.layout.linework import polyline, rectangle, widths_for
from asfitted.layout.sheet_layout import Item

if TYPE_CHECKING:
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.wall_view import WallView
    from asfitted.resolve.installation import Room

W = widths_for("A3")
TITLE_MM = 9.5
SECOND_MM = 9.5  # a second line, for scale and bar
BAR_STEPS_M = {20: 0.5, 25: 0.5, 50: 1.0, 75: 1.0, 100: 2.0, 200: 5.0, 500: 10.0}


def scale_words(scale: int) -> str:
    """Return the scale with the paper it is true on."""
    return f"1:{scale} @ A3"


def title_words(view: WallView, room: Room) -> str:
    """Return the title of the view, with the room where the sheet is wide enough for it."""
    usable = usable_box("A3").width
    whole = f"Elevation {view.wall.name}: {room.name}, seen from inside"
    fits = text_width_mm(whole, VIEW, bold=True) <= usable
    return whole if fits else f"Elevation {view.wall.name}, seen from inside"


def title_height_mm(view: WallView, room: Room) -> float:
    """Return the room that title, scale and bar need: on one line where the wall is long."""
    return TITLE_MM if _on_one_line(view, room) else TITLE_MM + SECOND_MM


def _bar_mm(scale: int) -> float:
    return 4 * BAR_STEPS_M[scale] * 1000 / scale


def _on_one_line(view: WallView, room: Room) -> bool:
    title = text_width_mm(title_words(view, room), VIEW, bold=True)
    scale = text_width_mm(scale_words(view.scale), BODY)
    return title + scale + _bar_mm(view.scale) + 22.0 <= view.mm(view.wall.length_mm)


def draw_view_title(drawing: Drawing, view: WallView, room: Room, bottom: float) -> float:
    """Write the title at the foot of the view, and the scale with its bar after or below it.

    Returns:
        Where the title ends, x in mm.
    """
    usable = usable_box("A3")
    words = title_words(view, room)
    one_line = _on_one_line(view, room)
    last = bottom - 1.8
    y = last if one_line else last - SECOND_MM
    width = text_width_mm(words, VIEW, bold=True)
    x = view.left if view.left + width <= usable.x1 else usable.x0
    end = x + width
    drawing.add(text_item("view:title", words, Point(x, y), VIEW, bold=True))
    if one_line:
        x += width + 8.0
    drawing.add(text_item("view:scale", scale_words(view.scale), Point(x, last)))
    bar_x = x + text_width_mm(scale_words(view.scale), BODY) + 6.0
    for item in scale_bar(Point(bar_x, last), view.scale):
        drawing.add(item)
    return max(end, bar_x + _bar_mm(view.scale) + 6.0)


def scale_bar(at: Point, scale: int) -> list[Item]:
    """Return a bar of four steps, alternately solid, with metres written over it."""
    step_m = BAR_STEPS_M[scale]
    step = step_m * 1000 / scale
    paths = []
    for i in range(4):
        box = Box(at.x + i * step, at.y - 1.6, at.x + (i + 1) * step, at.y)
        paths.append(rectangle(box, width_mm=W.narrow, fill="black" if i % 2 == 0 else "white"))
    paths.append(polyline((at.x, at.y - 2.4), (at.x, at.y), width_mm=W.narrow))
    items = [Item("scale-bar", "dim", tuple(paths))]
    for i in (0, 2, 4):
        unit = " m" if i == 4 else ""
        figure = f"{step_m * i:g}{unit}"
        place = Point(at.x + i * step, at.y - 3.4)
        items.append(text_item(f"scale-bar:{i}", figure, place, BODY, anchor="middle"))
    return items
