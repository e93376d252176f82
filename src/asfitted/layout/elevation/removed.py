"""How what is taken away is drawn: hatched and struck through, so that it reads in black alone."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.linework import polyline, widths_for

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.geometry import Box
    from asfitted.layout.sheet_layout import Path

W = widths_for("A3")
HATCH_MM = 1.6  # between the lines of the hatching
LONG_HATCH_MM = 4.0  # along a run
LONG_MM = 25.0


def hatching(box: Box) -> Iterator[Path]:
    """Yield oblique lines through a box, rising to the right."""
    pitch = LONG_HATCH_MM if max(box.width, box.height) > LONG_MM else HATCH_MM
    at = box.x0 - box.height + pitch
    while at < box.x1:
        x0, x1 = max(at, box.x0), min(at + box.height, box.x1)
        y0, y1 = box.y1 - (x0 - at), box.y1 - (x1 - at)
        if x1 - x0 > 0.3:
            yield polyline((x0, y0), (x1, y1), width_mm=0.18)
        at += pitch


def strike(box: Box) -> Iterator[Path]:
    """Yield the strike: a cross through a thing, one line along a run."""
    middle = box.centre
    if box.width > 4 * box.height:
        yield polyline((box.x0, middle.y), (box.x1, middle.y), width_mm=W.narrow)
    elif box.height > 4 * box.width:
        yield polyline((middle.x, box.y0), (middle.x, box.y1), width_mm=W.narrow)
    else:
        yield polyline((box.x0, box.y0), (box.x1, box.y1), width_mm=W.narrow)
        yield polyline((box.x0, box.y1), (box.x1, box.y0), width_mm=W.narrow)
