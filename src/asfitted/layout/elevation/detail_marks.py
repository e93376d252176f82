"""The marks of enlarged details on the view they are taken from: boundary, letter, sheet."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box
from asfitted.layout.callout import Callout
from asfitted.layout.linework import rectangle, widths_for

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.references import References
    from asfitted.layout.elevation.wall_view import WallView
    from asfitted.layout.elevation.window import Window

W = widths_for("A3")
WEIGHT = 20.0  # the letter of a detail matters more than any other words


@dataclass(frozen=True)
class DetailMark:
    """An enlarged detail as its view tells of it."""

    letter: str
    key: str  # of the view that shows it
    window: Window
    scale: int

    def box_on(self, view: WallView) -> Box:
        """Return the boundary on the sheet."""
        w = self.window
        return Box(view.x(w.from_mm), view.y(w.high_mm), view.x(w.to_mm), view.y(w.low_mm))


def draw_boundaries(
    drawing: Drawing, view: WallView, details: Sequence[DetailMark]
) -> tuple[Box, ...]:
    """Draw the boundary of each detail and return the boxes."""
    boxes = []
    for detail in details:
        box = detail.box_on(view)
        drawing.draw(
            f"detail:{detail.letter}:boundary",
            "outline",
            rectangle(box, width_mm=W.narrow, pattern="long_dash_double_dot"),
            title=f"enlarged in detail {detail.letter}",
        )
        boxes.append(box)
    return tuple(boxes)


def detail_callouts(
    view: WallView, details: Sequence[DetailMark], refs: References
) -> tuple[Callout, ...]:
    """Return the letters of the details, with scale and sheet."""
    found = []
    for detail in details:
        middle = (detail.window.low_mm + detail.window.high_mm) / 2
        spot = refs.spot(detail.key, detail.window.from_mm, middle)
        sheet = f", sheet {spot}" if spot else ""
        found.append(
            Callout(
                f"detail:{detail.letter}",
                f"Detail {detail.letter}",
                (f"1:{detail.scale}{sheet}",),
                detail.box_on(view),
                refs.link(detail.key, "view:title"),
                weight=WEIGHT,
            )
        )
    return tuple(found)
