"""An armoured end: the gland as a stack of parts in order, and the end as it is stripped."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.details.figure import HEAD_MM, heading
from asfitted.layout.details.sketch import Sketch
from asfitted.layout.lettering import BODY, line_pitch_mm, wrap
from asfitted.layout.sheet_layout import Circle, Item, Stroke, Text
from asfitted.reference.armoured_end import bedding_proud_mm, gland_parts

if TYPE_CHECKING:
    from asfitted.geometry import Point
    from asfitted.layout.sheet_layout import Paper
    from asfitted.reference.armoured_end import GlandPart

#: Sign of each part by its number in the order of assembly, and the room it takes in the stack.
PARTS = {
    1: ("gland_shroud", 20.0),
    2: ("gland_seal_nut", 19.0),
    3: ("gland_clamp_nut", 20.0),
    4: ("gland_clamp_ring", 13.0),
    5: ("gland_cone", 20.0),
    6: ("gland_seal_washer", 11.0),
    7: ("gland_earth_tag", 12.0),
    8: ("gland_wall", 12.0),
    9: ("gland_serrated_washer", 11.0),
    10: ("gland_locknut", 14.0),
}
SIGN_MM = 20.0
CABLE_MM = 42.0
BALLOON_MM = 3.3
LIST_ROW_MM = 11.5
STACK_WIDTH_MM = 250.0
AXIS_Y = HEAD_MM + 22.0
LIST_Y = AXIS_Y + 21.0


@dataclass(frozen=True)
class StackFigure:
    """The parts of the gland pulled apart along the cable, with the list of parts."""

    key: str
    number: int
    tags: tuple[str, ...]

    width_mm = STACK_WIDTH_MM
    height_mm = LIST_Y + 5 * LIST_ROW_MM

    def draw(self, at: Point, paper: Paper) -> tuple[Item, ...]:
        """Return the items with the figure's top left corner at ``at``."""
        sketch = Sketch(self.key, at, paper)
        heading(
            sketch,
            f"{self.number}  Armour gland: parts in order of assembly",
            self.tags,
            self.width_mm,
        )
        self._cable(sketch)
        x = CABLE_MM
        for part in gland_parts():
            symbol, room = PARTS[part.number]
            middle = x + room / 2
            title = f"{part.number} {part.name}"
            top = AXIS_Y - SIGN_MM / 2
            sketch.sign(
                f"part{part.number}", symbol, middle - SIGN_MM / 2, top, SIGN_MM, title=title
            )
            _balloon(sketch, f"balloon{part.number}", str(part.number), middle, AXIS_Y - 16.5)
            low = top + (0.0 if part.number in {7, 8} else 0.18 * SIGN_MM)
            sketch.line(
                f"leader{part.number}", (middle, AXIS_Y - 16.5 + BALLOON_MM), (middle, low - 0.8)
            )
            x += room
        y, left, right = AXIS_Y + 15.0, CABLE_MM, x - 4.0
        sketch.line("order", (left, y), (right, y))
        sketch.line("order:head", (right - 3.0, y - 1.2), (right, y), (right - 3.0, y + 1.2))
        sketch.words("cable:words", "from the cable", left - 2.0, y + BODY / 2, anchor="end")
        sketch.words("inside:words", "to the inside of the enclosure", x, y + BODY / 2)
        return (*sketch.items, *self._list(sketch))

    def _cable(self, sketch: Sketch) -> None:
        """Draw the cable end at the left: sheath, armour, bedding and cores."""
        _stripped_cable(sketch, 0.0, AXIS_Y, (18.0, 8.0, 4.0, 10.0), 4.2)

    def _list(self, sketch: Sketch) -> list[Item]:
        """Return the list of parts in two columns: number, sign, name and note."""
        items: list[Item] = []
        column_mm = self.width_mm / 2
        for i, part in enumerate(gland_parts()):
            x, y = (i // 5) * column_mm, LIST_Y + (i % 5) * LIST_ROW_MM
            items += _list_row(sketch, part, x, y, column_mm - 24.0)
        return items


def _list_row(sketch: Sketch, part: GlandPart, x: float, y: float, room_mm: float) -> list[Item]:
    """Return one row of the list of parts; it explains its sign, so it is part of the legend."""
    symbol, _ = PARTS[part.number]
    row = Sketch(f"legend:{sketch.key}:{part.number}", sketch.at, sketch.paper)
    row.words("number", str(part.number), x + 5.0, y + 5.0 + BODY / 2, anchor="end", bold=True)
    row.sign("sign", symbol, x + 8.0, y, title=part.name)
    said = f"{part.name}: {part.note}" if part.note else part.name
    lines = wrap(said, room_mm, BODY)[:2]
    first = y + 5.0 + BODY / 2 - (len(lines) - 1) * line_pitch_mm(BODY) / 2
    row.words("words", lines, x + 21.0, first)
    return row.items


def _balloon(sketch: Sketch, name: str, number: str, x: float, y: float) -> None:
    """Draw a numbered ring."""
    centre = sketch.on_sheet(x, y)
    ring = Circle(centre, BALLOON_MM, Stroke(sketch.widths.narrow))
    words = Text(centre.moved(dy=BODY / 2), number, BODY, anchor="middle")
    sketch.items.append(Item(f"{sketch.key}:{name}", "dim", (ring,)))
    sketch.items.append(Item(f"{sketch.key}:{name}:number", "text", (words,)))


def _stripped_cable(
    sketch: Sketch,
    x: float,
    y: float,
    lengths_mm: tuple[float, float, float, float],
    half_mm: float,
) -> None:
    """Draw a cable from the left: sheath, armour (hatched), bedding, three cores."""
    sheath, armour, bedding, cores = lengths_mm
    a, b, c = x + sheath, x + sheath + armour, x + sheath + armour + bedding
    sketch.box("sheath", (x, y - half_mm, a, y + half_mm), wide=True)
    inner, bed = half_mm - 0.7, half_mm - 1.6
    sketch.box("armour", (a, y - inner, b, y + inner))
    step = 1.6
    strokes = int((armour - step) / step)
    for i in range(strokes):
        left = a + 0.4 + i * step
        sketch.line(f"armour:wire{i}", (left, y + inner), (left + step, y - inner))
    sketch.box("bedding", (b, y - bed, c, y + bed))
    for i, dy in enumerate((-1.6, 0.0, 1.6)):
        sketch.line(f"core{i}", (c, y + dy * bed / 2.6), (c + cores, y + dy * bed / 2.6))


END_Y = HEAD_MM + 26.0
END_LENGTHS = (18.0, 34.0, 14.0, 52.0)


@dataclass(frozen=True)
class StrippedEndFigure:
    """The end as it is stripped, with the lengths by letter; the table gives each in mm."""

    key: str
    number: int
    tags: tuple[str, ...]

    width_mm = 122.0
    height_mm = END_Y + 32.0

    def draw(self, at: Point, paper: Paper) -> tuple[Item, ...]:
        """Return the items with the figure's top left corner at ``at``."""
        sketch = Sketch(self.key, at, paper)
        title = f"{self.number}  Armoured end as stripped"
        heading(sketch, title, self.tags, self.width_mm)
        _stripped_cable(sketch, 2.0, END_Y, END_LENGTHS, 7.0)
        sheath, armour, bedding, cores = END_LENGTHS
        a, b = 2.0 + sheath, 2.0 + sheath + armour
        c, d = b + bedding, b + bedding + cores
        _dimension(sketch, "A: armour bared", (a, b), END_Y - 12.0, END_Y - 7.6)
        face = b + 3.0
        sketch.line("face", (face, END_Y + 6.2), (face, END_Y + 9.0), pattern="dashed")
        _dimension(sketch, "B", (face, c), END_Y + 13.0, END_Y + 9.8)
        said = f"bedding inside, {bedding_proud_mm().value:g} or more"
        sketch.words("bedding:words", said, c + 3.0, END_Y + 14.2)
        words = "C: end of sheath to end of cores, at least"
        _dimension(sketch, words, (a, d), END_Y + 25.0, END_Y + 7.6)
        sketch.words("sheath:words", "sheath", 2.0 + sheath / 2, END_Y + 11.5, anchor="middle")
        sketch.words("cores:words", "cores", (c + d) / 2, END_Y - 4.5, anchor="middle")
        return tuple(sketch.items)


def _dimension(
    sketch: Sketch, words: str, ends: tuple[float, float], y: float, from_y: float
) -> None:
    """Draw a dimension line with its words above it; they begin with its letter."""
    name, (x0, x1) = words[0], ends
    tick = 1.2
    sketch.line(f"dim:{name}", (x0, y), (x1, y), kind="dim")
    out = 1.5 if y > from_y else -1.5
    for i, x in enumerate((x0, x1)):
        sketch.line(f"dim:{name}:edge{i}", (x, from_y), (x, y + out), kind="dim")
        sketch.line(f"dim:{name}:tick{i}", (x - tick, y + tick), (x + tick, y - tick), kind="dim")
    sketch.words(f"dim:{name}:words", words, (x0 + x1) / 2, y - 1.4, anchor="middle")
