"""A laid-out sheet: every line, sign and word at its final place in mm. All that ``draw`` reads.

x runs right and y runs DOWN from the trimmed top left corner of the paper. Nothing here knows a
drawing library; nothing in ``draw`` moves, sizes or decides anything.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from asfitted.geometry import Box, Point

Kind = Literal[
    "symbol",  # one use of a symbol (its box is what wires may not run through)
    "wire",  # a connector: polyline with a net; each end must meet a symbol, busbar, flag or wire
    "busbar",
    "flag",  # an end that goes on elsewhere: off-page reference, corner continuation
    "text",
    "dim",  # dimension lines, extension lines, leaders, level marks
    "outline",  # rooms, walls, enclosures, containment edges, table rules, view wedges
    "frame",  # the drawing frame rectangle (exactly one item, one closed path)
    "frame-label",  # zone letters, field labels of the title block (may be 1.8 mm)
]
Pattern = Literal["continuous", "dashed", "long_dash_dot", "long_dash_double_dot", "dotted"]
Tone = Literal["black", "grey", "tint", "white"]  # grey: 4.5:1 on white or better; tint: fills only
Paper = Literal["A3", "A4", "A4 portrait"]

#: Who a pack is made for; a sheet says which of them get it.
READERS = ("client", "second-electrician", "inspector")
#: Width and height in mm of each paper as printed.
PAPERS: dict[Paper, tuple[float, float]] = {
    "A3": (420.0, 297.0),
    "A4": (297.0, 210.0),
    "A4 portrait": (210.0, 297.0),
}


@dataclass(frozen=True)
class Stroke:
    """How a line is inked."""

    width_mm: float
    pattern: Pattern = "continuous"
    tone: Tone = "black"


@dataclass(frozen=True)
class Path:
    """A polyline or polygon; ``fill`` paints its inside."""

    points: tuple[Point, ...]
    stroke: Stroke | None
    closed: bool = False
    fill: Tone | None = None


@dataclass(frozen=True)
class Circle:
    """A circle: junction dots, grid bubbles, revision marks."""

    centre: Point
    radius_mm: float
    stroke: Stroke | None
    fill: Tone | None = None


@dataclass(frozen=True)
class Text:
    """One line of text. ``at`` is on the baseline; ``cap_mm`` is the height of its capitals.

    ``turned`` text reads from the right-hand side of the sheet (rotated 90 degrees anticlockwise).
    """

    at: Point
    text: str
    cap_mm: float
    anchor: Literal["start", "middle", "end"] = "start"
    bold: bool = False
    turned: bool = False
    tone: Tone = "black"


@dataclass(frozen=True)
class SymbolUse:
    """One use of a symbol. ``at`` is the top left corner of its 10 x 10 box after turning.

    ``size_mm`` is the side of the box (10 is the default, 7 the least). ``turn`` is clockwise on
    paper. With turn 0 power enters at the middle of the top and leaves at the middle of the bottom.
    """

    name: str
    at: Point
    size_mm: float = 10.0
    turn: Literal[0, 90, 180, 270] = 0
    mirrored: bool = False
    width_mm: float = 0.35  # stroke width on paper, whatever the size


@dataclass(frozen=True)
class Picture:
    """A picture of dots in its box: the mark of a firm. ``png`` is the whole PNG file."""

    png: bytes
    box: Box


Primitive = Path | Circle | Text | SymbolUse | Picture


@dataclass(frozen=True)
class Item:
    """One drawn thing: a group that carries its identity.

    ``ident`` is unique on the sheet and the same from one revision to the next (a tag, never a
    running number). ``net`` names what a wire carries (one net per electrically joined set).
    ``title`` shows on hover. ``link`` is the ident of a target "sheet-number#item" or empty.
    """

    ident: str
    kind: Kind
    parts: tuple[Primitive, ...]
    net: str = ""
    title: str = ""
    link: str = ""


@dataclass(frozen=True)
class SymbolInfo:
    """What layout may know of a symbol: its name, legend words and whether a standard has it."""

    name: str
    legend: str
    standard: bool  # False: a sign of our own making, marked with a dagger in the legend
    group: Literal["supply", "protection", "wiring", "accessories", "data", "containment", "marks"]


@dataclass(frozen=True)
class SheetLayout:
    """One sheet, complete. Items are drawn in order."""

    number: str  # "01"; unique in the pack
    name: str  # file stem, such as "01-single-line-diagram"
    title: str
    paper: Paper
    items: tuple[Item, ...]
    section: str = "Drawings"  # bookmark group in the PDF
    notes: tuple[str, ...] = field(default=())
    readers: tuple[str, ...] = READERS  # whose packs it goes into
    key: str = ""  # what it is from issue to issue, whatever its number: "elevation/A"
    in_handover: bool = True  # False: only in the pack of one reader, not in the whole handover

    @property
    def size_mm(self) -> tuple[float, float]:
        """Width and height of the paper in mm."""
        return PAPERS[self.paper]

    @property
    def symbols_used(self) -> tuple[str, ...]:
        """Names of the symbols on the sheet, sorted."""
        uses = (p for item in self.items for p in item.parts if isinstance(p, SymbolUse))
        return tuple(sorted({use.name for use in uses}))


def text_box(text: Text, width_mm: float) -> Box:
    """Return the box of a text of known width: capitals above, a descender below the baseline."""
    below = 0.33 * text.cap_mm
    if text.turned:
        lead = {"start": 0.0, "middle": width_mm / 2, "end": width_mm}[text.anchor]
        y1 = text.at.y + lead
        return Box(text.at.x - 1.05 * text.cap_mm, y1 - width_mm, text.at.x + below, y1)
    lead = {"start": 0.0, "middle": width_mm / 2, "end": width_mm}[text.anchor]
    x0 = text.at.x - lead
    return Box(x0, text.at.y - 1.05 * text.cap_mm, x0 + width_mm, text.at.y + below)
