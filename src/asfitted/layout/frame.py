"""Frame, zone grid and centring marks of a sheet (ISO 5457 from memory), and its usable area.

Zones are letters down the sides and numbers along top and bottom, in fields of 50 mm counted out
from the centre of the sheet; I and O are not used as letters.
"""

from __future__ import annotations

import itertools

from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.sheet_layout import PAPERS, Item, Paper, Path, Text

LEFT, RIGHT, TOP, BOTTOM = 20.0, 10.0, 10.0, 10.0  # trimmed edge to frame; left is for filing
FIELD, BAND = 50.0, 5.0
CLEAR = 5.0  # ink of the drawing stays this far inside the frame
LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"


def frame_box(paper: Paper) -> Box:
    """Return the inside of the frame line."""
    width, height = PAPERS[paper]
    return Box(LEFT, TOP, width - RIGHT, height - BOTTOM)


def usable_box(paper: Paper) -> Box:
    """Return the area a drawing may use: the frame less a clear margin of 5 mm."""
    return frame_box(paper).grown(-CLEAR)


def _cuts(low: float, high: float, centre: float) -> list[float]:
    """Return the zone boundaries strictly inside (low, high), out from the centre."""
    first = centre - FIELD * int((centre - low - 1e-6) // FIELD)
    cuts = []
    at = first
    while at < high - 1e-6:
        cuts.append(at)
        at += FIELD
    return [c for c in cuts if c > low + 1e-6]


def zone_of(paper: Paper, at: Point) -> str:
    """Return the zone, such as "C5", that a point of the sheet lies in."""
    box = frame_box(paper)
    width, height = PAPERS[paper]
    column = sum(at.x >= cut for cut in _cuts(box.x0, box.x1, width / 2))
    row = sum(at.y >= cut for cut in _cuts(box.y0, box.y1, height / 2))
    return f"{LETTERS[row]}{column + 1}"


def frame_items(paper: Paper) -> tuple[Item, ...]:
    """Return the frame line, the zone ticks and letters, and the centring marks."""
    box = frame_box(paper)
    width, height = PAPERS[paper]
    items = [Item("frame", "frame", (rectangle(box, width_mm=0.7),))]
    columns = _cuts(box.x0, box.x1, width / 2)
    rows = _cuts(box.y0, box.y1, height / 2)
    ticks: list[Path] = []
    for x in columns:
        ticks.append(polyline((x, box.y0 - BAND), (x, box.y0), width_mm=0.25))
        ticks.append(polyline((x, box.y1), (x, box.y1 + BAND), width_mm=0.25))
    for y in rows:
        ticks.append(polyline((box.x0 - BAND, y), (box.x0, y), width_mm=0.25))
        ticks.append(polyline((box.x1, y), (box.x1 + BAND, y), width_mm=0.25))
    items.append(Item("frame-grid", "outline", tuple(ticks)))
    items.append(Item("frame-centring", "outline", _centring(box, width, height)))
    labels = _labels(box, [box.x0, *columns, box.x1], [box.y0, *rows, box.y1])
    items.append(Item("frame-zones", "frame-label", labels))
    return tuple(items)


def _centring(box: Box, width: float, height: float) -> tuple[Path, ...]:
    """Return the four centring marks: through the band, and 4 mm in where no title block lies."""
    x, y, inside = width / 2, height / 2, 4.0
    return (
        polyline((x, box.y0 - BAND), (x, box.y0 + inside), width_mm=0.7),
        polyline((x, box.y1 + BAND), (x, box.y1), width_mm=0.7),
        polyline((box.x0 - BAND, y), (box.x0 + inside, y), width_mm=0.7),
        polyline((box.x1 + BAND, y), (box.x1 - inside, y), width_mm=0.7),
    )


def _labels(box: Box, xs: list[float], ys: list[float]) -> tuple[Text, ...]:
    """Return the zone numbers and letters, in the band outside the frame."""
    texts: list[Text] = []
    for i, (a, b) in enumerate(itertools.pairwise(xs)):
        spots = (box.y0 - 1.3, box.y1 + BAND - 1.2)
        texts += [Text(Point((a + b) / 2, y), str(i + 1), BODY, anchor="middle") for y in spots]
    for i, (a, b) in enumerate(itertools.pairwise(ys)):
        middle = (a + b) / 2 + BODY / 2
        spots = (box.x0 - BAND / 2, box.x1 + BAND / 2)
        texts += [Text(Point(x, middle), LETTERS[i], BODY, anchor="middle") for x in spots]
    return tuple(texts)
