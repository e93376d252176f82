"""A figure while it is being drawn: places in mm from its own top left corner."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY, line_pitch_mm
from asfitted.layout.linework import polyline, rectangle, widths_for
from asfitted.layout.sheet_layout import Circle, Item, Path, Stroke, SymbolUse, Text

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.linework import Widths
    from asfitted.layout.sheet_layout import Kind, Paper, Pattern

XY = tuple[float, float]


@dataclass
class Sketch:
    """Items of one figure; ``key`` begins the ident of each, ``at`` is the figure's corner."""

    key: str
    at: Point
    paper: Paper
    items: list[Item] = field(default_factory=list)

    @property
    def widths(self) -> Widths:
        """Line widths of the paper."""
        return widths_for(self.paper)

    def on_sheet(self, x: float, y: float) -> Point:
        """Return a place of the figure on the sheet."""
        return self.at.moved(x, y)

    def wire(
        self,
        name: str,
        net: str,
        *points: XY,
        pattern: Pattern = "continuous",
        title: str = "",
    ) -> None:
        """Add a conductor through the points; ``net`` is joined to the key of the figure."""
        path = Path(tuple(self.on_sheet(*p) for p in points), Stroke(self.widths.symbol, pattern))
        title = title or f"conductor {net.partition(':')[0]}"
        self.items.append(
            Item(f"{self.key}:{name}", "wire", (path,), net=f"{self.key}:{net}", title=title)
        )

    def bar(self, name: str, net: str, x0: float, x1: float, y: float) -> None:
        """Add a level bar that conductors may end on."""
        ends = ((self.at.x + x0, self.at.y + y), (self.at.x + x1, self.at.y + y))
        line = polyline(*ends, width_mm=self.widths.extra_wide)
        self.items.append(Item(f"{self.key}:{name}", "busbar", (line,), net=f"{self.key}:{net}"))

    def sign(
        self,
        name: str,
        symbol: str,
        x: float,
        y: float,
        size_mm: float = 10.0,
        *,
        turn: Literal[0, 90, 180, 270] = 0,
        mirrored: bool = False,
        title: str = "",
    ) -> None:
        """Add a use of a symbol, its box with the corner at (x, y)."""
        use = SymbolUse(
            symbol,
            self.on_sheet(x, y),
            size_mm,
            turn=turn,
            mirrored=mirrored,
            width_mm=self.widths.symbol,
        )
        self.items.append(Item(f"{self.key}:{name}", "symbol", (use,), title=title or name))

    def terminal(self, name: str, x: float, y: float, radius_mm: float = 1.0) -> None:
        """Add a terminal: a small open circle that a conductor may end on."""
        ring = Circle(self.on_sheet(x, y), radius_mm, Stroke(self.widths.symbol), fill="white")
        self.items.append(Item(f"{self.key}:{name}", "symbol", (ring,), title=name))

    def words(
        self,
        name: str,
        lines: str | Sequence[str],
        x: float,
        y: float,
        cap_mm: float = BODY,
        *,
        anchor: Literal["start", "middle", "end"] = "start",
        bold: bool = False,
    ) -> None:
        """Add one or more lines of text, the first baseline at y."""
        all_lines = [lines] if isinstance(lines, str) else list(lines)
        pitch = line_pitch_mm(cap_mm)
        texts = tuple(
            Text(self.on_sheet(x, y + i * pitch), line, cap_mm, anchor=anchor, bold=bold)
            for i, line in enumerate(all_lines)
            if line
        )
        if texts:
            self.items.append(Item(f"{self.key}:{name}", "text", texts))

    def line(
        self, name: str, *points: XY, pattern: Pattern = "continuous", kind: Kind = "outline"
    ) -> None:
        """Add a narrow line that is no conductor: an edge, a link, a leader."""
        placed = [(self.at.x + x, self.at.y + y) for x, y in points]
        path = polyline(*placed, width_mm=self.widths.narrow, pattern=pattern)
        self.items.append(Item(f"{self.key}:{name}", kind, (path,)))

    def box(
        self,
        name: str,
        corners: tuple[float, float, float, float],
        *,
        pattern: Pattern = "continuous",
        wide: bool = False,
    ) -> None:
        """Add the outline of a box (x0, y0, x1, y1)."""
        x0, y0, x1, y1 = corners
        placed = Box(self.at.x + x0, self.at.y + y0, self.at.x + x1, self.at.y + y1)
        width = self.widths.symbol if wide else self.widths.narrow
        path = rectangle(placed, width_mm=width, pattern=pattern)
        self.items.append(Item(f"{self.key}:{name}", "outline", (path,)))

    def ring(self, name: str, corners: tuple[float, float, float, float]) -> None:
        """Add a long ring round conductors, its ends rounded, within (x0, y0, x1, y1)."""
        x0, y0, x1, y1 = corners
        dx, dy = min(1.5, (x1 - x0) / 2), min(1.5, (y1 - y0) / 2)
        points = (
            (x0, y0 + dy), (x0 + dx, y0), (x1 - dx, y0), (x1, y0 + dy),
            (x1, y1 - dy), (x1 - dx, y1), (x0 + dx, y1), (x0, y1 - dy), (x0, y0 + dy),
        )  # fmt: skip
        self.line(name, *points)
