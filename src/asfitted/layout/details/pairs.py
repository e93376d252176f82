"""Cores or pins drawn from end to end: balun pairs, coaxial with power, Power over Ethernet."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from asfitted.fonts import text_width_mm
from asfitted.layout.details.figure import HEAD_MM, heading
from asfitted.layout.details.sketch import Sketch
from asfitted.layout.lettering import BODY, wrap

if TYPE_CHECKING:
    from asfitted.geometry import Point
    from asfitted.layout.sheet_layout import Item, Paper, Pattern

Carries = Literal["picture", "dc", "spare", "network"]
PATTERNS: dict[Carries, Pattern] = {
    "picture": "long_dash_double_dot",
    "dc": "dashed",
    "spare": "dotted",
    "network": "continuous",
}
LINE_WORDS: dict[Carries, str] = {
    "picture": "Carries the picture",
    "dc": "Carries 12 V d.c.",
    "spare": "Spare core",
    "network": "Carries data, and power where stated",
}
SIGN_MM = 12.0  # plug at each side
LEAST_BOX_MM = 34.0
LINE_MM = 76.0
ROW_MM = 8.0
GROUP_GAP_MM = 4.0


@dataclass(frozen=True)
class Conductor:
    """One core or pin: its words above the line, what it carries, and its duty at each end."""

    words: str
    carries: Carries
    left: str
    right: str


@dataclass(frozen=True)
class Group:
    """Conductors that lie together: a twisted pair."""

    conductors: tuple[Conductor, ...]


@dataclass(frozen=True)
class Plug:
    """What the conductors of some groups, counted from 0, end in at one side."""

    symbol: str
    side: Literal["left", "right"]
    first: int
    last: int


@dataclass(frozen=True)
class PairsFigure:
    """Conductors between two ends, grouped, each with its words."""

    key: str
    number: int
    tags: tuple[str, ...]
    title: str
    left_name: str
    right_name: str
    groups: tuple[Group, ...]
    plugs: tuple[Plug, ...]
    ringed: bool  # a ring round each group: twisted together

    @property
    def box_mm(self) -> float:
        """Width of the box at each end: the longest duty fits it."""
        duties = [d for g in self.groups for c in g.conductors for d in (c.left, c.right)]
        longest = max(text_width_mm(duty, BODY) for duty in duties)
        return max(LEAST_BOX_MM, longest + 6.0)

    @property
    def width_mm(self) -> float:
        """Width on the sheet, mm."""
        return 2 * (SIGN_MM + self.box_mm) + LINE_MM

    @property
    def height_mm(self) -> float:
        """Height on the sheet, mm."""
        return self._rows_end() + 3.0

    def _rows_end(self) -> float:
        rows = sum(len(group.conductors) for group in self.groups)
        return HEAD_MM + 13.0 + rows * ROW_MM + (len(self.groups) - 1) * GROUP_GAP_MM

    @property
    def carried(self) -> tuple[Carries, ...]:
        """Kinds of line that the figure uses, for the legend."""
        found = dict.fromkeys(c.carries for group in self.groups for c in group.conductors)
        return tuple(kind for kind in PATTERNS if kind in found)

    def draw(self, at: Point, paper: Paper) -> tuple[Item, ...]:
        """Return the items with the figure's top left corner at ``at``."""
        sketch = Sketch(self.key, at, paper)
        heading(sketch, f"{self.number}  {self.title}", self.tags, self.width_mm)
        self._ends(sketch)
        for i, group in enumerate(self.groups):
            self._group(sketch, f"group{i + 1}", group, self._spans()[i][0])
        for plug in self.plugs:
            middle = (self._spans()[plug.first][0] + self._spans()[plug.last][1]) / 2
            _plug(sketch, plug, middle, self.width_mm)
        return tuple(sketch.items)

    def _spans(self) -> list[tuple[float, float]]:
        """Return where the first and the last conductor of each group lie."""
        spans, y = [], HEAD_MM + 13.0 + ROW_MM / 2
        for group in self.groups:
            last = y + (len(group.conductors) - 1) * ROW_MM
            spans.append((y, last))
            y = last + ROW_MM + GROUP_GAP_MM
        return spans

    def _ends(self, sketch: Sketch) -> None:
        """Draw the boxes of both ends with their names."""
        x0, x1 = SIGN_MM, self.width_mm - SIGN_MM - self.box_mm
        for side, x, name in (("left", x0, self.left_name), ("right", x1, self.right_name)):
            sketch.box(f"{side}:box", (x, HEAD_MM, x + self.box_mm, self._rows_end()), wide=True)
            lines = wrap(name, self.box_mm - 3.0, BODY, bold=True)[:2]
            sketch.words(
                f"{side}:name",
                lines,
                x + self.box_mm / 2,
                HEAD_MM + 4.0,
                anchor="middle",
                bold=True,
            )

    def _group(self, sketch: Sketch, name: str, group: Group, y: float) -> None:
        """Draw the conductors of a group from y down, its ring and its plugs."""
        x0 = SIGN_MM + self.box_mm
        x1 = x0 + LINE_MM
        last = y + (len(group.conductors) - 1) * ROW_MM
        for i, one in enumerate(group.conductors):
            row = y + i * ROW_MM
            net = f"{name}:{i + 1}"
            for side, x in (("left", x0 - 1.5), ("right", x1 + 1.5)):
                sketch.terminal(f"{net}:{side}", x, row)
            ends = ((x0 - 0.5, row), (x1 + 0.5, row))
            sketch.wire(net, net, *ends, pattern=PATTERNS[one.carries], title=one.words)
            sketch.words(f"{net}:words", one.words, (x0 + x1) / 2, row - 1.5, anchor="middle")
            sketch.words(f"{net}:duty:left", one.left, x0 - 4.0, row + BODY / 2, anchor="end")
            sketch.words(f"{net}:duty:right", one.right, x1 + 4.0, row + BODY / 2)
        if self.ringed and len(group.conductors) > 1:
            for side, x in (("left", x0 + 6.0), ("right", x1 - 6.0)):
                sketch.ring(f"{name}:ring:{side}", (x - 1.2, y - 1.8, x + 1.2, last + 1.8))


def _plug(sketch: Sketch, plug: Plug, y: float, width_mm: float) -> None:
    """Draw a plug beside an end, its lead joined to the box."""
    is_left = plug.side == "left"
    name = f"{plug.side}:{plug.symbol}:{plug.first}"
    x = 0.0 if is_left else width_mm - 10.0
    sketch.sign(f"{name}:plug", plug.symbol, x, y - 5.0, turn=90 if is_left else 270)
    edge = SIGN_MM if is_left else width_mm - SIGN_MM
    sketch.line(f"{name}:lead", (x + 10.0 if is_left else x, y), (edge, y))
