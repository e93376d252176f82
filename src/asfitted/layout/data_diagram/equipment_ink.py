"""Draws the blocks of a sheet: enclosure, equipment with its words, flags where it goes on."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING, Literal

from asfitted.geometry import Box, Point
from asfitted.layout.data_diagram.blocks import FLAG_SIGN_MM, patch_words
from asfitted.layout.data_diagram.columns import PATTERNS
from asfitted.layout.data_diagram.hard_wrap import hard_wrap
from asfitted.layout.data_diagram.measuring import LINE
from asfitted.layout.data_diagram.paging import FLAG_MM, PAD_MM
from asfitted.layout.data_diagram.placing import RowInk
from asfitted.layout.frame import usable_box, zone_of
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, lines_of_text
from asfitted.layout.linework import rectangle
from asfitted.layout.sheet_layout import Item, Path, Stroke, SymbolUse

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from asfitted.layout.data_diagram.blocks import EquipmentWords
    from asfitted.layout.data_diagram.columns import Columns
    from asfitted.layout.data_diagram.measuring import MeasuredRow
    from asfitted.layout.data_diagram.paging import Part
    from asfitted.layout.sheet_layout import Paper


@dataclass(frozen=True)
class Spot:
    """A place that a flag elsewhere names: its sheet, its zone, and the ident of its item."""

    sheet: str
    zone: str
    ident: str

    @property
    def words(self) -> str:
        """``sheet 10, zone G2``."""
        return f"sheet {self.sheet}, zone {self.zone}"

    @property
    def link(self) -> str:
        """The target of a link to it."""
        return f"{self.sheet}#{self.ident}"


Spots = dict[tuple[str, str], Spot]  # by kind of flag and what it is of


class SheetInk:
    """Draws one sheet of the diagram; ``spots`` say where each flag's other end is."""

    def __init__(self, paper: Paper, columns: Columns, top_y: float, spots: Spots) -> None:
        """Take the paper, its columns, the top of the room for rows and the flags' places."""
        area = usable_box(paper)
        self.paper = paper
        self.columns = columns
        self.left_x = area.x0
        self.top_y = top_y
        self.spots = spots
        self.rows = RowInk(paper, columns, area.x0)
        self.widths = self.rows.widths

    def sheet(self, parts: Sequence[Part], links: Mapping[str, str]) -> list[Item]:
        """Return the items of the parts on one sheet."""
        items: list[Item] = []
        for _, group in groupby(parts, key=lambda part: part.block.location):
            items += self._enclosure(list(group))
        for part in parts:
            items += self._part(part, links)
        return items

    def _enclosure(self, parts: list[Part]) -> list[Item]:
        """Return the edge round blocks that stand together, with its heading."""
        first, last = parts[0], parts[-1]
        left = self.left_x + self.columns.block_x
        top = self.top_y + first.heading_y
        box = Box(left, top, self.left_x + self.columns.right_x, self.top_y + last.y1 + 1.5)
        ident = f"enclosure:{first.block.tag}:{first.number}"
        edge = rectangle(box, width_mm=self.widths.narrow, pattern="long_dash_dot")
        at = Point(left + 3.0, top + BODY + 1.5)
        words = lines_of_text(list(first.heading), at, bold=True)
        return [Item(ident, "outline", (edge,)), Item(f"{ident}:name", "text", words)]

    def _part(self, part: Part, links: Mapping[str, str]) -> list[Item]:
        items: list[Item] = []
        for row, y in zip(part.rows, part.row_ys, strict=True):
            place = self.top_y + y
            if row.row.is_patch:
                items += self._patch_row(row, place)
            else:
                items += self.rows.row(row, place, links.get(row.row.device, ""))
        y = self.top_y + part.y0 + PAD_MM
        for one in part.block.equipment:
            made, y = self._equipment(one, part, y)
            items += made
        if part.comes_from:
            items += self._cut_flag(part, "from", self.top_y + part.y0 + PAD_MM)
        if part.goes_on:
            items += self._cut_flag(part, "to", self.top_y + part.y1 - FLAG_MM + 1.0)
        return items

    def _equipment(self, one: EquipmentWords, part: Part, y: float) -> tuple[list[Item], float]:
        """Return a piece of equipment with its words, and the next y."""
        at = Point(self.left_x + self.columns.equipment_x, y)
        ident = f"{part.block.tag}/{one.tag}:{part.number}"
        use = SymbolUse(one.symbol, at, width_mm=self.widths.symbol)
        tag_at = at.moved(14.0, TAG + 0.6)
        kind_at = tag_at.moved(dy=(len(one.tag_lines) - 1) * line_pitch_mm(TAG) + LINE + 0.6)
        items = [
            Item(f"{ident}:symbol", "symbol", (use,), title=one.tag),
            Item(
                f"{ident}:tag", "text", lines_of_text(list(one.tag_lines), tag_at, TAG, bold=True)
            ),
            Item(f"{ident}:kind", "text", lines_of_text(list(one.kind_lines), kind_at)),
        ]
        y += one.head_mm
        if part.comes_from:
            return items, y + 3.0
        words_at = Point(at.x, y + BODY + 0.5)
        if one.lines:
            items.append(Item(f"{ident}:totals", "text", lines_of_text(list(one.lines), words_at)))
        y += len(one.lines) * LINE
        if one.patch:
            items += self._patch_flag(one, Point(at.x, y + 2.5))
            y += one.patch_mm
        return items, y + 4.0

    def _patch_flag(self, one: EquipmentWords, at: Point) -> list[Item]:
        """Return the flag at a recorder that says where its patch lead goes."""
        there = self.spots[("patch at switch", one.tag)]
        lines = patch_words(one.patch, there.words, self.columns)
        sign = _flag(f"patch:{one.tag}", at, self.widths.symbol, there.link, turn=0)
        words_at = at.moved(FLAG_SIGN_MM + 2.0, BODY + 0.2)
        return [sign, Item(f"patch:{one.tag}:words", "text", lines_of_text(lines, words_at))]

    def _patch_row(self, measured: MeasuredRow, y: float) -> list[Item]:
        """Return the row at a switch port that a recorder's patch lead comes to."""
        row, leg = measured.row, measured.legs[0]
        there = self.spots[("patch at recorder", row.device)]
        line_y, name = y + leg.y_mm, f"patch:{row.device}:to-switch"
        start = self.left_x + self.columns.words_x - 2.0
        port_x = self.left_x + self.columns.port_x
        corner = Point(start - FLAG_SIGN_MM, line_y - FLAG_SIGN_MM / 2)
        path = Path(
            (Point(start, line_y), Point(port_x, line_y)),
            Stroke(self.widths.symbol, PATTERNS["network"]),
        )
        said = lines_of_text([there.words], Point(start + 2.0, line_y + 1.4 + BODY))
        return [
            _flag(name, corner, self.widths.symbol, there.link, turn=0),
            Item(f"{name}:lead", "wire", (path,), net=name, title=leg.leg.above),
            *self.rows.leg_words(name, leg, line_y),
            Item(f"{name}:sheet", "text", said),
            *self.rows.port(f"{name}:port", leg, line_y),
        ]

    def _cut_flag(self, part: Part, way: Literal["from", "to"], y: float) -> list[Item]:
        """Return the flag where a block goes on, with the sheet and zone of its other end."""
        number = part.number - 1 if way == "from" else part.number + 1
        key = ("to" if way == "from" else "from", f"{part.block.tag}:{number}")
        there = self.spots[key]
        at = Point(self.left_x + self.columns.port_x, y)
        ident = cut_ident(part, way)
        lead = "goes on" if way == "to" else "comes"
        said = f"{lead} {way} {there.words}"
        words_at = at.moved(FLAG_SIGN_MM + 2.0, FLAG_SIGN_MM / 2 + BODY / 2)
        room = self.columns.equipment_x - self.columns.port_x - FLAG_SIGN_MM - 4.0
        lines = hard_wrap(said, room, BODY)
        words_at = words_at.moved(dy=-(len(lines) - 1) * LINE / 2)
        return [
            _flag(ident, at, self.widths.symbol, there.link, turn=180 if way == "from" else 0),
            Item(f"{ident}:words", "text", lines_of_text(lines, words_at)),
        ]


def cut_ident(part: Part, way: str) -> str:
    """Return the ident of the flag where a part begins or goes on."""
    return f"{part.block.tag}:{way}:{part.number}"


def _flag(ident: str, at: Point, width_mm: float, link: str, *, turn: Literal[0, 180]) -> Item:
    use = SymbolUse("off_page", at, FLAG_SIGN_MM, turn=turn, width_mm=width_mm)
    return Item(ident, "flag", (use,), title="goes on elsewhere", link=link)


def spots_of(
    sheets: Sequence[Sequence[Part]],
    paper: Paper,
    columns: Columns,
    top_y: float,
    number_of: Callable[[int], str],
) -> Spots:
    """Return where both ends of every flag of the diagram are.

    Args:
        sheets: parts on each sheet, in order.
        paper: paper of the sheets.
        columns: its columns.
        top_y: top of the room for rows on a sheet, mm.
        number_of: sheet number by place in ``sheets``, from 0.
    """
    left = usable_box(paper).x0
    spots: Spots = {}
    for i, parts in enumerate(sheets):
        for part in parts:
            cut_x = left + columns.port_x
            for way, y in (("from", part.y0 + PAD_MM), ("to", part.y1 - FLAG_MM + 1.0)):
                zone = zone_of(paper, Point(cut_x, top_y + y))
                spot = Spot(number_of(i), zone, cut_ident(part, way))
                spots[(way, f"{part.block.tag}:{part.number}")] = spot
            _patch_spots(spots, part, (paper, number_of(i)), columns, Point(left, top_y))
    return spots


def _patch_spots(
    spots: Spots, part: Part, sheet: tuple[Paper, str], columns: Columns, corner: Point
) -> None:
    """Note both ends of the patch leads that a part holds."""
    paper, number = sheet
    for row, y in zip(part.rows, part.row_ys, strict=True):
        if row.row.is_patch:
            at = corner.moved(
                columns.words_x - 2.0 - FLAG_SIGN_MM, y + row.legs[0].y_mm - FLAG_SIGN_MM / 2
            )
            ident = f"patch:{row.row.device}:to-switch"
            spots[("patch at switch", row.row.device)] = Spot(number, zone_of(paper, at), ident)
    y = part.y0 + PAD_MM
    for one in part.block.equipment:
        if one.patch and not part.comes_from:
            down = one.head_mm + len(one.lines) * LINE + 2.5
            at = corner.moved(columns.equipment_x, y + down)
            ident = f"patch:{one.tag}"
            spots[("patch at recorder", one.tag)] = Spot(number, zone_of(paper, at), ident)
        y += one.height_mm
