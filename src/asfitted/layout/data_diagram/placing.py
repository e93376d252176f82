"""Places a row of the data diagram: facts and device left, legs, ports at the equipment."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.data_diagram.columns import PATTERNS
from asfitted.layout.data_diagram.measuring import CLEAR, LINE
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, lines_of_text
from asfitted.layout.linework import polyline, rectangle, widths_for
from asfitted.layout.sheet_layout import Item, Path, Stroke, SymbolUse

if TYPE_CHECKING:
    from asfitted.layout.data_diagram.columns import Columns
    from asfitted.layout.data_diagram.measuring import MeasuredLeg, MeasuredRow
    from asfitted.layout.sheet_layout import Paper

SIGN_MM = 10.0


class RowInk:
    """Draws the rows of one sheet."""

    def __init__(self, paper: Paper, columns: Columns, left_x: float) -> None:
        """Take the paper, its columns and the left edge of the usable area."""
        self.columns = columns
        self.left_x = left_x
        self.widths = widths_for(paper)

    def row(self, measured: MeasuredRow, y: float, link: str = "") -> list[Item]:
        """Return the items of one device and its legs, the top of the row at y."""
        row, ident = measured.row, measured.row.device
        at = Point(self.left_x, y)
        tag = lines_of_text(list(measured.tag), at.moved(dy=TAG), TAG, bold=True)
        facts_y = TAG + (len(measured.tag) - 1) * line_pitch_mm(TAG) + LINE + 0.8
        facts = lines_of_text(list(measured.facts), at.moved(dy=facts_y))
        items = [
            Item(f"{ident}:tag", "text", tag, title=_hover(measured), link=link),
            Item(f"{ident}:facts", "text", facts),
        ]
        first_y = y + (measured.legs[0].y_mm if measured.legs else SIGN_MM / 2 + 1.0)
        corner = Point(self.left_x + self.columns.device_x, first_y - SIGN_MM / 2)
        camera = row.symbol.startswith("camera")
        # the lens looks away from the cable; outlets and access points stand on their side
        use = SymbolUse(
            row.symbol,
            corner,
            turn=0 if camera else 90,
            mirrored=camera,
            width_mm=self.widths.narrow if row.state else self.widths.symbol,
        )
        items.append(Item(ident, "symbol", (use,), title=_hover(measured), link=link))
        for leg in measured.legs:
            items.extend(self._leg(ident, leg, corner, y + leg.y_mm, camera=camera))
        if len(measured.legs) > 1:
            items.append(self._one_cable(ident, y, measured))
        return items

    def _leg(
        self, ident: str, leg: MeasuredLeg, corner: Point, y: float, *, camera: bool
    ) -> list[Item]:
        """Return the wires, baluns, words and port of one leg."""
        carries = leg.leg.carries
        name = f"{ident}:{carries}"
        # the sign of a camera is the width of its body; its second leg leaves from under it
        start = Point(corner.x + (9.0 if camera else SIGN_MM), corner.y + SIGN_MM / 2)
        if carries == "supply":
            start = Point(corner.x + 6.5, corner.y + 6.8)
        line = [start] if start.y == y else [start, Point(start.x, y)]
        port_x = self.left_x + self.columns.port_x
        items: list[Item] = []
        if leg.leg.baluns:
            near, far = (self.left_x + x for x in (self.columns.balun_x, self.columns.far_balun_x))
            items += [
                self._wire(f"{name}:1", name, [*line, Point(near, y)], leg),
                self._balun(f"{ident}:balun:1", near, y, mirrored=False),
                self._wire(f"{name}:2", f"{name}:pair", [Point(near + 10, y), Point(far, y)], leg),
                self._balun(f"{ident}:balun:2", far, y, mirrored=True),
                self._wire(
                    f"{name}:3", f"{name}:coax", [Point(far + 10, y), Point(port_x, y)], leg
                ),
            ]
        else:
            items.append(self._wire(name, name, [*line, Point(port_x, y)], leg))
        return [*items, *self.leg_words(name, leg, y), *self.port(f"{name}:port", leg, y)]

    def _balun(self, ident: str, x: float, y: float, *, mirrored: bool) -> Item:
        use = SymbolUse(
            "balun",
            Point(x, y - SIGN_MM / 2),
            mirrored=mirrored,
            width_mm=self.widths.symbol,
        )
        return Item(ident, "symbol", (use,), title="balun")

    def _wire(self, ident: str, net: str, points: list[Point], leg: MeasuredLeg) -> Item:
        stroke = Stroke(self.widths.symbol, PATTERNS[leg.leg.carries])
        return Item(ident, "wire", (Path(tuple(points), stroke),), net=net, title=leg.leg.above)

    def leg_words(self, name: str, leg: MeasuredLeg, y: float) -> list[Item]:
        """Return the words above and below a leg."""
        x = self.left_x + self.columns.words_x
        items = []
        if leg.above:
            top = y - CLEAR - (len(leg.above) - 1) * LINE
            items.append(
                Item(f"{name}:above", "text", lines_of_text(list(leg.above), Point(x, top)))
            )
        if leg.below:
            at = Point(x, y + CLEAR + BODY)
            items.append(Item(f"{name}:below", "text", lines_of_text(list(leg.below), at)))
        return items

    def port(self, ident: str, leg: MeasuredLeg, y: float) -> list[Item]:
        """Return the box of a port or channel with its words."""
        x = self.left_x + self.columns.port_x
        box = Box(x, y - leg.port_mm / 2, x + self.columns.port_mm, y + leg.port_mm / 2)
        first = y + BODY / 2 - (len(leg.port) - 1) * LINE / 2
        words = lines_of_text(list(leg.port), Point(x + 1.5, first))
        edge = rectangle(box, width_mm=self.widths.symbol)
        return [
            Item(ident, "symbol", (edge,), title=leg.leg.port),
            Item(f"{ident}:words", "text", words),
        ]

    def _one_cable(self, ident: str, y: float, measured: MeasuredRow) -> Item:
        """Return a slim ring round the legs that lie in one cable."""
        x = self.left_x + self.columns.ring_x
        top, bottom = y + measured.legs[0].y_mm - 2.2, y + measured.legs[-1].y_mm + 2.2
        ring = (
            (x - 1.2, top + 1.5), (x, top), (x + 1.2, top + 1.5), (x + 1.2, bottom - 1.5),
            (x, bottom), (x - 1.2, bottom - 1.5), (x - 1.2, top + 1.5),
        )  # fmt: skip
        line = polyline(*ring, width_mm=self.widths.narrow)
        return Item(f"{ident}:one-cable", "outline", (line,))


def _hover(measured: MeasuredRow) -> str:
    return ": ".join((measured.row.device, *measured.row.facts[:1]))
