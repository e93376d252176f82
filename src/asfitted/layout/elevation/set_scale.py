"""One scale for all elevations of a job, and the parts of walls too long for a sheet at it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.elevation.paper_room import above_title
from asfitted.layout.elevation.wall_drawing import Frame, base_band_mm, need_of
from asfitted.layout.elevation.wall_parts import parts_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.sheet_layout import Paper

SCALES = (20, 25, 50, 75, 100, 200, 500, 1000)
WHOLE_WALL = 50  # up to this a wall is shown whole if it can be; beyond, a long one is cut


def frame_at(content: WallContent, scale: int, paper: Paper) -> Frame:
    """Return how a view is drawn at a scale with the least room above it."""
    return Frame(scale, paper, base_band_mm(content, scale), above_title(paper).width)


def view_fits(content: WallContent, scale: int, paper: Paper = "A3") -> bool:
    """Tell whether the wall with ladder, dimensions and title has room on the sheet."""
    need, room = need_of(content, frame_at(content, scale, paper)), above_title(paper)
    return need.width <= room.width and need.height <= room.height


def _is_low_enough(content: WallContent, scale: int, paper: Paper) -> bool:
    return need_of(content, frame_at(content, scale, paper)).height <= above_title(paper).height


def views_at_one_scale(
    contents: Sequence[WallContent], paper: Paper, first_mark: int = 1
) -> tuple[int, tuple[WallContent, ...]]:
    """Return the scale of the walls of a room, and these, those too long for a sheet in parts.

    It is the largest preferred scale at which every wall fits whole. If that would be smaller than
    1:50, long walls are cut at 1:50 instead, or at the largest scale at which the highest fits.
    """
    for scale in SCALES:
        if scale <= WHOLE_WALL and all(view_fits(c, scale, paper) for c in contents):
            return scale, tuple(contents)
    scale = next(
        (
            s
            for s in SCALES
            if s >= WHOLE_WALL and all(_is_low_enough(c, s, paper) for c in contents)
        ),
        SCALES[-1],
    )
    views: list[WallContent] = []
    marks = first_mark
    for content in contents:
        parts = parts_of(content, _most_mm(content, scale, paper), marks)
        marks += len(parts) - 1
        views += parts
    return scale, tuple(views)


def _most_mm(content: WallContent, scale: int, paper: Paper) -> float:
    """Return the greatest length of wall that has room on a sheet, mm of the building."""
    need = need_of(content, frame_at(content, scale, paper))
    beside = need.width - content.window.length_mm / scale
    beside = max(beside, need.left + MATCH_WORDS_MM)
    return (above_title(paper).width - beside) * scale


MATCH_WORDS_MM = 12.0  # half of the mark of a match line stands beside the view
