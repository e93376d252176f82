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
    from asfitted.resolve.installation import Wall

W = widths_for("A3")
PITCH_MM = 4.6
WIDEST_MM = 36.0  # words of a rung
COMMON = 2  # a height that so many things share gets a rung
RUNG_MM = 15.0  # from the words to the wall
ARROWS_MM = 5.0  # room for corner arrows next to the wall


@dataclass(frozen=True)
class Level:
    """One rung: its height above the floor and its words."""

    up_mm: float
    words: str


def levels_of(wall: Wall, pieces: Sequence[RunPiece], things: Sequence[Thing]) -> tuple[Level, ...]:
    """Return the rungs from the floor up: datum, common heights, containment, ceiling."""
    levels = [Level(0.0, "FFL ±0")]
    centres = Counter(round(t.at.up) for t in things if t.group in ("point", "data"))
    levels += [
        Level(up, f"C/L {height_words(up)}")
        for up, count in sorted(centres.items())
        if count >= COMMON
    ]
    runs: dict[tuple[float, str], list[str]] = {}
    for piece in pieces:
        if piece.is_level:
            tags = runs.setdefault((piece.start.up, piece.run.level_of), [])
            if piece.run.tag not in tags:
                tags.append(piece.run.tag)
    levels += [Level(up, _run_words(tags, of, up)) for (up, of), tags in runs.items()]
    levels.append(Level(wall.height_mm, f"ceiling {height_words(wall.height_mm)}"))
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
    return max(text_width_mm(level.words, BODY) for level in levels) + RUNG_MM


def draw_ladder(drawing: Drawing, view: WallView, levels: Sequence[Level]) -> None:
    """Draw a dash-dot rung for each level, with its words at the far left."""
    wanted = [-view.y(level.up_mm) for level in levels]
    spare = PITCH_MM * len(levels)
    places = spread(wanted, PITCH_MM, wanted[0], max(wanted[-1], wanted[0] + spare))
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
