"""The cut outline of the wall, its datum, its corners by name, and its doors and windows."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.callout import Callout
from asfitted.layout.lettering import BODY, TAG, box_of, line_pitch_mm, text_item
from asfitted.layout.linework import polyline, rectangle, widths_for
from asfitted.layout.sheet_layout import Item, Text

if TYPE_CHECKING:
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.wall_view import WallView
    from asfitted.layout.sheet_layout import Path
    from asfitted.resolve.installation import Opening

W = widths_for("A3")
FOLD_MM = 4.5  # how far a corner fold runs above the ceiling line
FRAME_MM = 50.0  # width of a door or window frame as drawn
SLAT_MM = 300.0


def draw_outline(drawing: Drawing, view: WallView, previous_wall: str) -> None:
    """Draw the extra-wide outline of floor, side walls and ceiling, and the named corner folds."""
    box = view.box
    drawing.draw(f"wall:{view.wall.name}", "outline", rectangle(box, width_mm=W.extra_wide))
    for side, x, name in (
        ("left", box.x0, f"{previous_wall} | {view.wall.name}"),
        ("right", box.x1, f"{view.wall.name} | {view.wall.next_wall}"),
    ):
        top = box.y0 - 1.0
        fold = polyline((x, top), (x, top - FOLD_MM), width_mm=W.narrow, pattern="long_dash_dot")
        drawing.draw(f"fold:{side}", "dim", fold)
        at = Point(x, top - FOLD_MM - 1.2)
        drawing.add(text_item(f"fold:{side}:name", name, at, TAG, anchor="middle", bold=True))


def draw_openings(drawing: Drawing, view: WallView) -> list[Callout]:
    """Draw doors and windows narrow, and return their callouts."""
    callouts = []
    for i, opening in enumerate(view.wall.openings):
        ident = f"opening:{view.wall.name}:{i}"
        box = opening_box(view, opening)
        drawing.draw(ident, "outline", *_opening_lines(view, opening, box))
        callouts.append(Callout(f"{ident}:words", "", opening_words(opening), box))
    return callouts


def opening_box(view: WallView, opening: Opening) -> Box:
    """Return the box of an opening on the sheet."""
    return Box(
        view.x(opening.from_mm),
        view.y(opening.sill_mm + opening.height_mm),
        view.x(opening.from_mm + opening.width_mm),
        view.y(opening.sill_mm),
    )


def opening_words(opening: Opening) -> tuple[str, ...]:
    """Return name and size of an opening, with the sill height of a window."""
    size = f"{opening.width_mm:g} × {opening.height_mm:g}"
    if opening.sill_mm > 0:
        return (opening.name, f"{size}, sill +{opening.sill_mm:g}")
    return (opening.name, size)


def _opening_lines(view: WallView, opening: Opening, box: Box) -> list[Path]:
    """Return the sign of an opening: frame, and leaf, pane or slats inside it."""
    lines = [rectangle(box, width_mm=W.narrow)]
    frame = max(view.mm(FRAME_MM), 1.0)
    inner = Box(box.x0 + frame, box.y0 + frame, box.x1 - frame, box.y1)
    if opening.kind == "door":
        lines.append(rectangle(inner, width_mm=W.narrow))
    elif opening.kind == "window":
        pane = Box(inner.x0, inner.y0, inner.x1, box.y1 - frame)
        lines.append(rectangle(pane, width_mm=W.narrow))
    elif opening.kind == "roller door":
        slat = max(view.mm(SLAT_MM), 2.0)
        lines.append(polyline((box.x0, box.y0 + slat), (box.x1, box.y0 + slat), width_mm=W.narrow))
        lines.append(polyline((box.x0, box.y1 - 1.2), (box.x1, box.y1 - 1.2), width_mm=W.narrow))
    return lines


def write_inside(drawing: Drawing, callout: Callout, box: Box) -> bool:
    """Write the words of an opening inside it where there is room; tell whether there was."""
    pitch = line_pitch_mm(BODY)
    for share in (0.5, 0.35, 0.7, 0.2, 0.85):
        first = box.y0 + box.height * share - pitch / 2 + BODY / 2
        texts = tuple(
            Text(Point(box.centre.x, first + i * pitch), line, BODY, anchor="middle")
            for i, line in enumerate(callout.lines)
        )
        if all(drawing.room.is_free(box_of(t)) for t in texts):
            drawing.add(Item(callout.ident, "text", texts))
            return True
    return False
