"""The profile of a run: walls one after another, the run at its height, its drops."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Point
from asfitted.layout.elevation.spread import spread
from asfitted.layout.elevation.wall_view import height_words
from asfitted.layout.lettering import BODY, TAG, text_item
from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.sheet_layout import Circle, Item, Path, Stroke, Text

if TYPE_CHECKING:
    from asfitted.layout.containment.developed_run import Stretch
    from asfitted.layout.containment.strip_drawing import StripBand
    from asfitted.layout.containment.strip_view import StripView
    from asfitted.layout.sheet_layout import Pattern
    from asfitted.layout.sheet_model import Numbers

DOT_MM, FOLD_MM, JOINT_MM = 0.7, 2.5, 1.6
LEVEL_PITCH_MM = 4.2
APART_MM = 3.0  # from the words of one match mark to those of the other
MARK_MM = 30.0  # from one mark of a cross-section to the next


def draw_profile(
    ident: str,
    view: StripView,
    band: StripBand,
    rows: tuple[float, float, float],
    numbers: Numbers,
) -> list[Item]:
    """Return walls, folds, levels, drops, the run itself, section marks and match marks.

    ``rows`` are top and foot of the row of walls, then where the names of rows start, x.
    """
    top, foot, left = rows
    return [
        *_walls(ident, view, band, (top, foot), numbers),
        text_item(f"{ident}:wall-name", "Wall", Point(left, foot - 1.6)),
        *_levels(ident, view, band, left),
        *_drops(ident, view, band),
        *_run(ident, view, band),
        *_joints(ident, view, band),
        *_marks(ident, view, band, foot, numbers),
        *_matches(ident, view, band, (top, foot), numbers),
    ]


def _walls(
    ident: str, view: StripView, band: StripBand, rows: tuple[float, float], numbers: Numbers
) -> list[Item]:
    """Return the names of the walls, with a fold line down to the floor at each corner."""
    thin = widths_for(band.paper).narrow
    items: list[Item] = []
    cuts: list[Path] = []
    for i, (wall, low, high) in enumerate(_by_wall(view)):
        a, b = view.x(low), view.x(high)
        name = (
            f"wall {wall}"
            if wall
            else "way not drawn"
            if view.developed.is_declared
            else "overhead"
        )
        short = wall or "–"
        shown = name if text_width_mm(name, BODY) <= b - a - 1.5 else short
        if text_width_mm(shown, BODY) <= b - a - 1.5:
            sheet = numbers.by_key.get(f"elevation/{wall}", "")
            text = Text(Point((a + b) / 2, rows[1] - 1.6), shown, BODY, "middle")
            link = f"{sheet}#wall:{wall}" if sheet else ""
            items.append(Item(f"{ident}:wall:{i}", "text", (text,), title=name, link=link))
        if i:
            cuts.append(polyline((a, rows[0]), (a, rows[1] + 0.8), width_mm=thin))
            top = view.at(_along_of(view, low)).y - FOLD_MM
            cuts.append(polyline((a, top), (a, view.floor), width_mm=thin, pattern="long_dash_dot"))
    rule = [polyline((view.left, y), (view.right, y), width_mm=thin) for y in rows]
    ends = [polyline((x, rows[0]), (x, rows[1]), width_mm=thin) for x in (view.left, view.right)]
    if view.right - view.left < 1.0:
        rule, ends = [], []
    lines = (*rule, *ends, *cuts)
    return [*items, Item(f"{ident}:folds", "outline", lines)] if lines else items


def _along_of(view: StripView, over: float) -> float:
    """Return the true distance along the run of a place so far sideways."""
    for stretch in view.developed.stretches:
        if over <= stretch.over[1] + 1e-6 and not stretch.is_upright:
            return stretch.along[0] + over - stretch.over[0]
    return view.developed.length_mm


def _by_wall(view: StripView) -> list[tuple[str, float, float]]:
    """Return the walls of a part in order, each from and to, stretches of one wall together."""
    found: list[tuple[str, float, float]] = []
    for stretch in view.developed.stretches:
        if not view.shown(stretch) or stretch.is_upright:
            continue
        low, high = (view.held(over) for over in stretch.over)
        if found and found[-1][0] == stretch.wall:
            found[-1] = (stretch.wall, found[-1][1], high)
        else:
            found.append((stretch.wall, low, high))
    return found


def _levels(ident: str, view: StripView, band: StripBand, left: float) -> list[Item]:
    """Return floor level and the levels of the run, each with its height at the left."""
    thin = widths_for(band.paper).narrow
    ups = {round(up) for s in view.developed.stretches if view.shown(s) for up in s.up}
    told = sorted({0, *ups}, reverse=True)
    ys = spread([view.y(up) for up in told], LEVEL_PITCH_MM, 0.0, 1e4)
    ends = (view.left - 4.0, max(view.right, view.left + 3.0) + 1.0)
    items: list[Item] = []
    lines: list[Path] = []
    for up, y in zip(told, ys, strict=True):
        words = "FFL ±0" if up == 0 else f"{_reference(view, up)} {height_words(up)}".strip()
        items.append(text_item(f"{ident}:level:{up}", words, Point(left, y + BODY / 2)))
        start = left + text_width_mm(words, BODY) + 0.8
        pattern: Pattern = "continuous" if up == 0 else "long_dash_dot"
        lines.append(polyline((start, y), (ends[0], view.y(up)), width_mm=thin))
        right = ends[1] if up == 0 else view.left
        if right > ends[0]:
            width = thin * 2 if up == 0 else thin
            lines.append(
                polyline(
                    (ends[0], view.y(up)), (right, view.y(up)), width_mm=width, pattern=pattern
                )
            )
    return [*items, Item(f"{ident}:levels", "dim", tuple(lines))]


def _reference(view: StripView, up: float) -> str:
    """Return what a level is the level of, where the run lies level at it."""
    level = any(round(s.up[0]) == round(s.up[1]) == up for s in view.developed.stretches)
    return view.developed.run.level_of if level and not view.developed.is_declared else ""


def _drops(ident: str, view: StripView, band: StripBand) -> list[Item]:
    """Return a line down from each event to the floor, heavier to the height of what is served."""
    widths = widths_for(band.paper)
    items: list[Item] = []
    for i, event in enumerate(band.events):
        at = view.at(event.along)
        x = view.x(view.held(view.developed.place(event.along)[0]))
        foot = view.floor + band.heights_mm[1]
        parts: list[Path | Circle] = []
        if event.kind != "corner":
            pattern = "dotted" if event.kind in ("end", "level") else "continuous"
            parts.append(
                polyline((x, at.y), (x, foot), width_mm=widths.narrow, pattern=pattern)  # type: ignore[arg-type]
            )
        if event.reach_mm is not None:
            end = Point(x, view.y(event.reach_mm))
            parts.append(polyline((x, at.y), (x, end.y), width_mm=widths.wide))
            parts.append(Circle(end, DOT_MM, None, fill="black"))
        if parts:
            name = f"{ident}:drop:{event.kind}:{event.tag}:{i}"
            items.append(Item(name, "dim", tuple(parts), title=event.words))
    return items


def _joints(ident: str, view: StripView, band: StripBand) -> list[Item]:
    """Return a diamond on the run where another one joins it."""
    width, size = widths_for(band.paper).narrow, JOINT_MM
    items = []
    for i, event in enumerate(band.events):
        if event.kind == "run":
            at = view.at(event.along).moved(dy=_middle_mm(view))
            corners = (at.moved(-size), at.moved(0, -size), at.moved(size), at.moved(0, size))
            sign = Path(corners, Stroke(width), closed=True, fill="white")
            name = f"{ident}:joint:{event.tag}:{i}"
            items.append(Item(name, "outline", (sign,), title=event.words))
    return items


def _middle_mm(view: StripView) -> float:
    """Return how far the middle of the run lies under the line of its level, mm of paper."""
    top, bottom = view.edges(0.0)
    return (top + bottom) / 2 - view.y(0.0)


def _run(ident: str, view: StripView, band: StripBand) -> list[Item]:
    """Return the run: all outlines first, then its body over them, so that pieces join."""
    run = view.developed.run
    widths = widths_for(band.paper)
    width = widths.wide if run.state == "new" else widths.narrow
    is_dashed = run.state == "removed" or view.developed.is_declared
    stroke = Stroke(width, "dashed" if is_dashed else "continuous")
    shown = [s for s in view.developed.stretches if view.shown(s)]
    outlines = tuple(Path(view.outline(s), stroke, closed=True) for s in shown)
    title = f"{run.tag} {run.words}"
    tone = "white" if is_dashed else "tint"
    bodies = tuple(Path(_inner(view, s, width), None, closed=True, fill=tone) for s in shown)  # type: ignore[arg-type]
    return [Item(f"{ident}:run", "outline", (*outlines, *bodies), title=title)]


def _inner(view: StripView, stretch: Stretch, width: float) -> tuple[Point, ...]:
    """Return the inside of an outline; a level piece is left open towards its neighbours."""
    points = view.outline(stretch)
    half = width / 2
    a, b, c, d = points
    return a.moved(half, half), b.moved(-half, half), c.moved(-half, -half), d.moved(half, -half)


def _marks(
    ident: str, view: StripView, band: StripBand, top: float, numbers: Numbers
) -> list[Item]:
    """Return the marks of cross-sections: a cut through the run, an arrow the way it is seen."""
    widths = widths_for(band.paper)
    places = [view.x(view.developed.place(along)[0]) for along, _, _ in band.marks]
    low = view.left + 6.0 if view.part.number > 1 else view.left - 18.0
    high = max(view.right, view.left + 40.0)
    if view.part.number < view.part.of:
        high = view.right - MARK_MM  # the words too are clear of the break line
    xs = spread(places, MARK_MM, low, max(high, low))
    items: list[Item] = []
    for (along, number, key), place, x in zip(band.marks, places, xs, strict=True):
        at = view.at(along)
        y = top + 6.6
        parts: list[Path] = [
            polyline((x, y + 1.5), (x, y + 4.5), (place, y + 6.5), width_mm=widths.narrow),
            polyline((place, y + 6.5), (place, at.y - 2.5), width_mm=widths.narrow),
            polyline((place, at.y - 2.5), (place, at.y + 3.0), width_mm=widths.wide),
            Path(
                (Point(x + 3.0, y + 1.5), Point(x, y + 0.3), Point(x, y + 2.7)),
                None,
                closed=True,
                fill="black",
            ),
        ]
        name = f"{ident}:section:{number}"
        items.append(Item(name, "dim", tuple(parts), title=f"cross-section {number}"))
        sheet = numbers.by_key.get(key, "–")
        texts = (
            Text(Point(x - 1.0, y + 3.2), str(number), TAG, "end", bold=True),
            Text(Point(x + 4.0, y + 3.0), f"sheet {sheet}", BODY),
        )
        link = f"{sheet}#section:{number}" if key in numbers.by_key else ""
        items.append(Item(f"{name}:words", "text", texts, link=link))
    return items


def _matches(
    ident: str, view: StripView, band: StripBand, rows: tuple[float, float], numbers: Numbers
) -> list[Item]:
    """Return the match marks at the cuts of a run that goes on: a break line and where to."""
    part, tag = view.part, view.developed.run.tag
    width = widths_for(band.paper).wide
    items: list[Item] = []
    for is_there, x, side, number, key in (
        (part.number > 1, view.left, -1.0, part.number - 1, band.twins[0]),
        (part.number < part.of, view.right, 1.0, part.number, band.twins[1]),
    ):
        if not is_there:
            continue
        y0, y1 = rows[1] + 6.0, view.floor + 1.0
        middle = (y0 + y1) / 2
        zigzag = [(x, y0), (x, middle - 2), (x - 1.2, middle - 1), (x + 1.2, middle + 1)]
        line = polyline(*zigzag, (x, middle + 2), (x, y1), width_mm=width)
        name = f"{ident}:match:{number}"
        sheet = numbers.by_key.get(key, "–")
        words = f"match {tag}-{number}: part {part.number + int(side)}, sheet {sheet}"
        items.append(Item(name, "flag", (line,), title=words))
        at, anchor = Point(x, rows[1] + 4.7), "end" if side > 0 else "start"
        if 2 * text_width_mm(words, BODY) > view.right - view.left - APART_MM:
            words = words.partition(": ")[2]  # both stand over a short part
        text = Text(at, words, BODY, anchor)  # type: ignore[arg-type]
        link = f"{sheet}#strip:{tag}:{part.number + int(side)}:run"
        items.append(Item(f"{name}:words", "text", (text,), link=link))
    return items
