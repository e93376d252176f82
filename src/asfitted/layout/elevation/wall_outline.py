"""The cut outline of the wall, its datum, its corners by name, and its doors and windows."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.callout import Callout
from asfitted.layout.elevation.references import References
from asfitted.layout.lettering import BODY, TAG, box_of, line_pitch_mm, text_item
from asfitted.layout.linework import polyline, rectangle, widths_for
from asfitted.layout.sheet_layout import Item, Text
from asfitted.layout.sheet_model import Numbers

if TYPE_CHECKING:
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_view import WallView
    from asfitted.layout.lettering import Anchor
    from asfitted.layout.sheet_layout import Path
    from asfitted.resolve.installation import Opening

W = widths_for("A3")
FOLD_MM = 4.5  # how far a corner fold runs above the ceiling line
PAST_MM = 3.0  # how far a match line runs past floor and ceiling
FRAME_MM = 50.0  # width of a door or window frame as drawn
SLAT_MM = 300.0
APART_MM = 2.0  # name of a corner to the words beside it
NARROW_MM = 30.0  # a view so narrow has its corner names outside its corners
SHORT_BAND_MM, WORDS_BAND_MM = 11.0, 15.5


def draw_outline(drawing: Drawing, view: WallView, content: WallContent, refs: References) -> None:
    """Draw floor, ceiling and sides: extra-wide where the wall ends, dash-dot where it goes on."""
    box, window = view.box, view.shown
    heavy = {"floor": window.reaches_floor(), "ceiling": window.reaches_ceiling(view.wall)}
    heavy |= {"left": window.left.kind == "corner", "right": window.right.kind == "corner"}
    ident = f"wall:{view.wall.name}"
    if all(heavy.values()):
        drawing.draw(ident, "outline", rectangle(box, width_mm=W.extra_wide))
    else:
        drawing.draw(ident, "outline", *_sides(view, heavy))
    words = [edge_words(content, side, refs) for side in ("left", "right")]
    is_wide = sides_fit(content, view.scale)
    for side, x, (name, sub) in (("left", box.x0, words[0]), ("right", box.x1, words[1])):
        if name:
            _draw_side(drawing, side, Point(x, box.y0), name, sub, is_wide=is_wide, view=view)


def _sides(view: WallView, heavy: dict[str, bool]) -> list[Path]:
    """Return the four sides, the heavy ones last so that they lie over the others."""
    box, window = view.box, view.shown
    past = PAST_MM if window.is_detail is False else 0.0
    ends = {
        "floor": ((box.x0, box.y1), (box.x1, box.y1)),
        "ceiling": ((box.x0, box.y0), (box.x1, box.y0)),
        "left": ((box.x0, box.y0 - past), (box.x0, box.y1 + past)),
        "right": ((box.x1, box.y0 - past), (box.x1, box.y1 + past)),
    }
    lines = []
    for name in sorted(ends, key=lambda n: heavy[n]):
        if heavy[name]:
            a, b = ends[name]
            upright = name in ("left", "right")
            a, b = ((a[0], box.y0), (b[0], box.y1)) if upright else (a, b)
            lines.append(polyline(a, b, width_mm=W.extra_wide))
        else:
            lines.append(polyline(*ends[name], width_mm=W.narrow, pattern="long_dash_dot"))
    return lines


def edge_words(content: WallContent, side: str, refs: References) -> tuple[str, str]:
    """Return what stands over one side of a view: "A | B" and what its line is, or "M1".

    On the outer face of a wall the line is where the room ends, not the corner of the building:
    lengths count from there, and how thick the wall round the corner is nobody recorded.
    """
    edge = content.window.left if side == "left" else content.window.right
    if edge.kind == "cut" or not edge.name:
        return "", ""
    if edge.kind == "match":
        along = content.window.from_mm if side == "left" else content.window.to_mm
        spot = refs.spot(edge.beyond, along, content.wall.height_mm)
        return edge.name, f"match line, sheet {spot}" if spot else "match line"
    pair = (edge.name, content.letter) if side == "left" else (content.letter, edge.name)
    if content.face == "outside":
        return " | ".join(pair), f"inner face of wall {edge.name}"
    return " | ".join(pair), "outer corner" if edge.is_outer else ""


def _widths(words: tuple[str, str]) -> tuple[float, float]:
    return text_width_mm(words[0], TAG, bold=True), text_width_mm(words[1], BODY)


def _stand_in_words(content: WallContent) -> list[tuple[str, str]]:
    return [edge_words(content, side, References(Numbers({}))) for side in ("left", "right")]


def sides_fit(content: WallContent, scale: int) -> bool:
    """Tell whether the words of both sides have room beside their names over the view."""
    width = content.window.length_mm / scale
    needed = sum(name / 2 + APART_MM + sub for name, sub in map(_widths, _stand_in_words(content)))
    return needed + 2 * APART_MM <= width


def band_mm(content: WallContent, scale: int) -> float:
    """Return the room that names and words of the sides need above the ceiling line."""
    return SHORT_BAND_MM if sides_fit(content, scale) else WORDS_BAND_MM


def side_overhang_mm(content: WallContent, scale: int) -> tuple[float, float]:
    """Return how far the names over the sides reach out left and right of the view, mm."""
    found = []
    is_wide = sides_fit(content, scale)
    narrow = content.window.length_mm / scale < NARROW_MM
    for name, sub in map(_widths, _stand_in_words(content)):
        widest = name if is_wide else max(name, sub)
        found.append((widest if narrow else widest / 2) + 1.0)
    return found[0], found[1]


def _draw_side(
    drawing: Drawing,
    side: str,
    corner: Point,
    name: str,
    sub: str,
    *,
    is_wide: bool,
    view: WallView,
) -> None:
    """Draw the fold over a corner with its names, words beside them or, in a narrow view, above."""
    top = corner.y - 1.0
    x = corner.x
    line = polyline((x, top), (x, top - FOLD_MM), width_mm=W.narrow, pattern="long_dash_dot")
    drawing.draw(f"fold:{side}", "dim", line)
    at_left = side == "left"
    anchor: Anchor = "middle"
    if view.box.width < NARROW_MM:
        anchor = "end" if at_left else "start"
    at = Point(x, top - FOLD_MM - 1.2)
    drawing.add(text_item(f"fold:{side}:name", name, at, TAG, anchor=anchor, bold=True))
    if not sub:
        return
    if is_wide:
        reach = text_width_mm(name, TAG, bold=True) / 2 + APART_MM
        spot = at.moved(reach if at_left else -reach)
        words = text_item(f"fold:{side}:words", sub, spot, anchor="start" if at_left else "end")
    else:
        words = text_item(f"fold:{side}:words", sub, at.moved(dy=-TAG - 1.2), anchor=anchor)
    drawing.add(words)


def draw_openings(drawing: Drawing, view: WallView, content: WallContent) -> list[Callout]:
    """Draw doors and windows narrow, and return their callouts."""
    callouts = []
    for number, opening, seen in content.openings:
        ident = f"opening:{view.wall.name}:{number}"
        box = opening_box(view, seen)
        title = ", ".join(opening_words(opening))
        lines = _opening_lines(view, opening, box)
        drawing.draw(ident, "outline", *lines, title=title)
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
    if box.width < 3 * frame or box.height < 3 * frame:
        return lines
    inner = Box(box.x0 + frame, box.y0 + frame, box.x1 - frame, box.y1)
    if opening.kind == "door":
        lines.append(rectangle(inner, width_mm=W.narrow))
    elif opening.kind == "window":
        pane = Box(inner.x0, inner.y0, inner.x1, box.y1 - frame)
        lines.append(rectangle(pane, width_mm=W.narrow))
    elif opening.kind == "roller door":
        slat = max(view.mm(SLAT_MM), 2.0)
        lines += [
            polyline((box.x0, y), (box.x1, y), width_mm=W.narrow)
            for y in (box.y0 + slat, box.y1 - 1.2)
            if box.y0 < y < box.y1
        ]
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
