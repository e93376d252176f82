"""What every figure of a detail sheet offers, and the heading that all of them carry."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

from asfitted.layout.lettering import BODY, TAG, fits, line_pitch_mm, wrap

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.geometry import Point
    from asfitted.layout.details.sketch import Sketch
    from asfitted.layout.sheet_layout import Item, Paper

HEAD_MM = 17.0  # title on up to two lines, tags on up to two


class Figure(Protocol):
    """One connection, drawn once for all the tags that have it."""

    @property
    def key(self) -> str:
        """Stable name: the ident of every item of the figure begins with it."""

    @property
    def tags(self) -> tuple[str, ...]:
        """What it applies to."""

    @property
    def width_mm(self) -> float:
        """Width on the sheet, mm."""

    @property
    def height_mm(self) -> float:
        """Height on the sheet, mm."""

    def draw(self, at: Point, paper: Paper) -> tuple[Item, ...]:
        """Return the items with the figure's top left corner at ``at``."""


def heading(sketch: Sketch, title: str, tags: Sequence[str], width_mm: float) -> None:
    """Draw the title of a figure and the tags that it applies to, within ``HEAD_MM``."""
    lines = wrap(title, width_mm, TAG, bold=True)[:2]
    sketch.words("title", lines, 0.0, TAG, TAG, bold=True)
    y = TAG + len(lines) * line_pitch_mm(TAG) - 0.6
    room = 2 if len(lines) == 1 else 1
    sketch.words("tags", tag_lines(tags, width_mm, room), 0.0, y)


def tag_lines(tags: Sequence[str], width_mm: float, most: int) -> list[str]:
    """Return "for X1, X2" on at most so many lines; the rest is counted, and is in the table."""
    for shown in range(len(tags), 0, -1):
        more = f" and {len(tags) - shown} more (table)" if shown < len(tags) else ""
        lines = wrap(f"for {', '.join(tags[:shown])}{more}", width_mm, BODY)
        if len(lines) <= most and all(fits(line, width_mm, BODY) for line in lines):
            return lines
    return [f"for {len(tags)} (table)"] if tags else []
