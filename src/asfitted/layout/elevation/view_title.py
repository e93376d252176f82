"""Title of an elevation below it, its scale, and the scale bar that stays true when resized."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.elevation.wall_view import height_words
from asfitted.layout.lettering import BODY, TAG, VIEW, text_item, wrap
from asfitted.layout.linework import polyline, rectangle, widths_for
from asfitted.layout.sheet_layout import Item

if TYPE_CHECKING:
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_view import WallView
    from asfitted.layout.sheet_layout import Paper

W = widths_for("A3")
TITLE_MM = 9.5
SUB_MM = 6.0  # each line under the title
SECOND_MM = 9.5  # a last line, for scale and bar
LEAST_TITLE_MM = 92.0  # a narrow view may have a title so wide
BAR_MM = 80.0  # about how long the scale bar is; in a narrow view half of it
BAR_STEPS_M = (0.05, 0.1, 0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 25.0, 50.0)


def scale_words(scale: int, paper: Paper = "A3") -> str:
    """Return the scale with the paper it is true on."""
    return f"1:{scale} @ {paper}"


def view_name(content: WallContent) -> str:
    """Return what a view is called: "Elevation A", "Detail a of elevation A"."""
    name = f"Elevation {content.letter}"
    if content.detail:
        return f"Detail {content.detail} of elevation {content.letter}"
    return f"{name}, outside face" if content.face == "outside" else name


def title_words(content: WallContent) -> tuple[str, str]:
    """Return the title of a view, and what stands behind it or on a line of its own."""
    room = content.room
    words = [room.name]
    if room.storey and room.storey != room.name:
        words.append(room.storey)
    if room.level_mm:
        words.append(f"FFL {height_words(room.level_mm)} above the ground floor")
    part, parts = content.part
    if parts > 1:
        words.append(f"part {part} of {parts}")
    words.append(f"seen from {content.face}")
    return view_name(content), ", ".join(words)


@dataclass(frozen=True)
class ViewTitle:
    """The title of a view in lines, and whether scale and bar stand behind it on its line."""

    lines: tuple[str, ...]  # the first large
    has_scale_behind: bool
    bar_steps: int
    width_mm: float

    @property
    def height_mm(self) -> float:
        """Room that it needs."""
        height = TITLE_MM + SUB_MM * (len(self.lines) - 1)
        return height if self.has_scale_behind else height + SECOND_MM


def title_of(content: WallContent, view: WallView, paper: Paper, most_mm: float) -> ViewTitle:
    """Return the title of a view: on one line where the view is wide, else on more."""
    name, rest = title_words(content)
    width = view.mm(view.shown.length_mm)
    room = min(max(width, LEAST_TITLE_MM), most_mm)
    whole = f"{name}: {rest}"
    wide = text_width_mm(whole, VIEW, bold=True)
    for steps in (4, 2):
        scale = _scale_mm(view.scale, steps, paper)
        if wide + scale + 8.0 <= width:
            return ViewTitle((whole,), has_scale_behind=True, bar_steps=steps, width_mm=width)
    steps = 4 if width > BAR_MM + 30.0 else 2
    lines: tuple[str, ...] = (whole,)
    if wide > room:
        head = text_width_mm(name, VIEW, bold=True)
        room = min(max(room, head), most_mm)
        lines = (name, *wrap(rest[0].upper() + rest[1:], room, TAG))
    widths = [text_width_mm(lines[0], VIEW, bold=True), _scale_mm(view.scale, steps, paper)]
    widths += [text_width_mm(line, TAG) for line in lines[1:]]
    return ViewTitle(lines, has_scale_behind=False, bar_steps=steps, width_mm=max(widths))


def _scale_mm(scale: int, steps: int, paper: Paper) -> float:
    """Return the width of the scale with its bar."""
    return text_width_mm(scale_words(scale, paper), BODY) + _bar_mm(scale, steps) + 14.0


def bar_step_m(scale: int) -> float:
    """Return the step of the scale bar: four of them are about 80 mm long."""
    return next((s for s in BAR_STEPS_M if 4000 * s / scale >= BAR_MM * 0.75), BAR_STEPS_M[-1])


def _bar_mm(scale: int, steps: int) -> float:
    return steps * bar_step_m(scale) * 1000 / scale


def draw_view_title(
    drawing: Drawing, view: WallView, title: ViewTitle, at: Point, paper: Paper
) -> None:
    """Write the title from the left end of its foot, and the scale with its bar behind or below."""
    scale = scale_words(view.scale, paper)
    last = at.y - 1.8
    y = last if title.has_scale_behind else last - SECOND_MM
    y -= SUB_MM * (len(title.lines) - 1)
    drawing.add(text_item("view:title", title.lines[0], Point(at.x, y), VIEW, bold=True))
    for number, line in enumerate(title.lines[1:], start=1):
        place = Point(at.x, y + SUB_MM * number)
        drawing.add(text_item(f"view:title:{number}", line, place, TAG))
    x = at.x
    if title.has_scale_behind:
        x += text_width_mm(title.lines[0], VIEW, bold=True) + 8.0
    drawing.add(text_item("view:scale", scale, Point(x, last)))
    bar_x = x + text_width_mm(scale, BODY) + 6.0
    for item in scale_bar(Point(bar_x, last), view.scale, title.bar_steps):
        drawing.add(item)


def scale_bar(at: Point, scale: int, steps: int = 4) -> list[Item]:
    """Return a bar of four steps, alternately solid, with metres written over it."""
    step_m = bar_step_m(scale)
    step = step_m * 1000 / scale
    paths = []
    for i in range(steps):
        box = Box(at.x + i * step, at.y - 1.6, at.x + (i + 1) * step, at.y)
        paths.append(rectangle(box, width_mm=W.narrow, fill="black" if i % 2 == 0 else "white"))
    paths.append(polyline((at.x, at.y - 2.4), (at.x, at.y), width_mm=W.narrow))
    items = [Item("scale-bar", "dim", tuple(paths))]
    for i in range(0, steps + 1, 2):
        unit = " m" if i == steps else ""
        figure = f"{step_m * i:g}{unit}"
        place = Point(at.x + i * step, at.y - 3.4)
        items.append(text_item(f"scale-bar:{i}", figure, place, BODY, anchor="middle"))
    return items
