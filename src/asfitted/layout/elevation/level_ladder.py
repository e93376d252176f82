"""The ladder of levels at the left edge: ceiling, containment, common heights, floor datum."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Point
from asfitted.layout.elevation.spread import spread
from asfitted.layout.elevation.wall_view import height_words
from asfitted.layout.lettering import BODY, text_item
from asfitted.layout.linework import polyline, widths_for
from asfitted.layout.sheet_layout import Path

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.runs_on_wall import RunPiece
    from asfitted.layout.elevation.things_on_wall import Thing
    from asfitted.layout.elevation.wall_view import WallView

W = widths_for("A3")
PITCH_MM = 4.6
WIDEST_MM = 36.0  # words of a rung
COMMON = 2  # a height that so many things share gets a rung
RUNG_MM = 15.0  # from the words to the wall
BELOW_MM, ABOVE_MM = 10.0, 1.5  # how far words may be pushed past floor and ceiling
ARROWS_MM = 5.0  # room for corner arrows next to the wall


@dataclass(frozen=True)
class Level:
    """One rung: its height above the floor and its words."""

    up_mm: float
    words: str


def levels_of(
    view: WallView, pieces: Sequence[RunPiece], things: Sequence[Thing], *, room_mm: float = 1e9
) -> tuple[Level, ...]:
    """Return the rungs from the floor up: datum, common heights, containment, ceiling.

    Where ``room_mm`` of paper is too little for all, common heights go first, then runs.
    """
    window = view.shown
    ends = [Level(0.0, "FFL ±0")] if window.reaches_floor() else []
    if window.reaches_ceiling(view.wall):
        ends.append(Level(view.wall.height_mm, f"ceiling {height_words(view.wall.height_mm)}"))
    centres = Counter(round(t.at.up) for t in things if t.group in ("point", "data"))
    common = [
        Level(up, f"C/L {height_words(up)}")
        for up, count in sorted(centres.items())
        if count >= COMMON
    ]
    runs: dict[tuple[int, str], list[str]] = {}
    for piece in pieces:
        if piece.is_level:
            tags = runs.setdefault((round(piece.start.up), piece.run.level_of), [])
            if piece.run.tag not in tags:
                tags.append(piece.run.tag)
    held = [Level(up, _run_words(tags, of, up)) for (up, of), tags in runs.items()]
    most = int(room_mm / PITCH_MM) + 1
    levels = ends
    for more in (held, common):
        levels = levels + more[: max(0, most - len(levels))]
    return tuple(sorted(levels, key=lambda level: (level.up_mm, level.words)))


def _run_words(tags: Sequence[str], of: str, up_mm: float) -> str:
    """Return tags and level of runs; the level alone where the tags are too long to stand here."""
    level = f"{of} {height_words(up_mm)}"
    words = f"{_listed(tags)} {level}"
    return words if text_width_mm(words, BODY) <= WIDEST_MM else level


def _listed(tags: Sequence[str]) -> str:
    return " ".join(tags) if len(tags) <= 3 else f"{tags[0]} and {len(tags) - 1} more"


def ladder_width_mm(levels: Sequence[Level]) -> float:
    """Return the room that the ladder needs left of the wall."""
    if not levels:
        return ARROWS_MM
    return max(text_width_mm(level.words, BODY, bold=not level.up_mm) for level in levels) + RUNG_MM


def draw_ladder(drawing: Drawing, view: WallView, levels: Sequence[Level]) -> None:
    """Draw a dash-dot rung for each level, with its words at the far left."""
    if not levels:
        return
    wanted = [-view.y(level.up_mm) for level in levels]
    places = spread(wanted, PITCH_MM, wanted[0] - BELOW_MM, wanted[-1] + ABOVE_MM)
    words_end = view.left - RUNG_MM
    for level, place in zip(levels, places, strict=True):
        true_y, y = view.y(level.up_mm), -place
        ident = f"level:{level.words}"
        elbow, near = words_end + 2.5, words_end + 6.5
        rung = polyline(
            (words_end + 1.0, y),
            (elbow, y),
            (near, true_y),
            (view.left - 1.0, true_y),
            width_mm=W.narrow,
            pattern="long_dash_dot",
        )
        parts: list[Path] = [rung]
        if level.up_mm == 0:
            parts.append(_triangle(Point(near + 2.0, true_y)))
        drawing.draw(ident, "dim", *parts)
        at = Point(words_end, y + BODY / 2)
        drawing.add(
            text_item(f"{ident}:words", level.words, at, anchor="end", bold=level.up_mm == 0)
        )


def _triangle(tip: Point) -> Path:
    """Return the solid level mark: a triangle that stands on its tip."""
    points = (tip, tip.moved(-1.7, -3.0), tip.moved(1.7, -3.0))
    return Path(points, None, closed=True, fill="black")
