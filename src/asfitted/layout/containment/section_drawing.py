"""A cross-section on the sheet: containment cut, cables at true size, tags, sizes."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.containment.section_outline import WIRE_MM, cable_path, outline_paths
from asfitted.layout.containment.section_words import figure_lines, where_words
from asfitted.layout.elevation.spread import spread
from asfitted.layout.given_words import state_before
from asfitted.layout.lettering import BODY, VIEW, line_pitch_mm, text_item, wrap
from asfitted.layout.linework import polyline, rectangle, widths_for
from asfitted.layout.sheet_layout import Circle, Item, Text

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.containment.cross_section import CrossSection
    from asfitted.layout.containment.packing import Laid
    from asfitted.layout.sheet_layout import Paper, Path
    from asfitted.layout.sheet_model import Model

SCALES = (5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.05)  # ISO 5455, from memory: 5:1 to 1:20
SIDES_MM, TALL_MM = 5.0, 62.0  # kept free beside a cross-section; the most it takes down the sheet
TAG_PITCH_MM, FAN_MM, TURNED_MM = 4.4, 7.0, 0.9
SIDE_PITCH_MM, SIDE_MM = 4.6, 5.0
TAG_ROOM_MM = 20.0  # at each side of a hollow whose tags stand beside it
DIM_MM, DIM_STEP_MM, BAR_MM = 9.0, 6.5, 9.0
PAD_MM = 1.2  # round a tag inside its cable
BAR_STEPS = (1, 2, 5, 10, 20, 50, 100)


@dataclass(frozen=True)
class SectionBlock:
    """A cross-section with heading, drawing, dimensions and figures; draws itself at a place."""

    section: CrossSection
    model: Model
    paper: Paper
    width: float
    strip: str  # where its place on the strip is: "sheet 15, zone C3"

    @property
    def scale(self) -> float:
        """Paper over true size: 2 for 2:1, 0.5 for 1:2."""
        wide, tall = self._outer_mm()
        most = self.width - (SIDES_MM if self.section.form == "layer" else 2 * TAG_ROOM_MM)
        fitting = (s for s in SCALES if wide * s <= most and tall * s <= TALL_MM)
        return next(fitting, SCALES[-1])

    def _outer_mm(self) -> tuple[float, float]:
        wall = self.section.wall_mm
        wide, tall = (inside + 2 * wall for inside in self.section.inside_mm)
        highest = max((p.y + p.shape.radius_mm for p in self.section.packed.laid), default=0.0)
        return wide, max(tall, highest)

    @property
    def _tags_inside(self) -> bool:
        """Whether every tag has room inside its cable."""
        laid = self.section.packed.laid
        return all(_holds_tag(p, self.scale) for p in laid)

    @property
    def _sides(self) -> bool:
        """Whether tags stand at both sides: not in one layer, and too small to hold them."""
        return self.section.form != "layer" and not self._tags_inside

    def _heading(self) -> list[str]:
        words = where_words(self.section, self.strip)
        return [line for part in words for line in wrap(part, self.width, BODY)]

    def _figures(self) -> list[tuple[str, bool]]:
        return [
            (line, bold)
            for part, bold in figure_lines(self.section, self.model)
            for line in wrap(part, self.width, BODY, bold=bold)
        ]

    @property
    def _above_mm(self) -> float:
        """Room for turned tags over a layer of cables."""
        if self.section.form != "layer":
            return 0.0
        tags = (text_width_mm(p.shape.tag, BODY) for p in self.section.packed.laid)
        return FAN_MM + max(tags, default=0.0)

    @property
    def _drawn_mm(self) -> float:
        return self._outer_mm()[1] * self.scale

    @property
    def _over_mm(self) -> float:
        """How far tags at the sides reach over and under what is drawn."""
        each_side = (len(self.section.packed.laid) + 1) // 2 if self._sides else 0
        return max(0.0, (each_side * SIDE_PITCH_MM - self._drawn_mm) / 2)

    @property
    def _under_drawn_mm(self) -> float:
        """Room under what is drawn for its dimensions, and for tags at the sides."""
        return max(self._dims_mm, self._over_mm + 1.0)

    @property
    def height_mm(self) -> float:
        """Height of the whole block."""
        head = VIEW + 2.0 + len(self._heading()) * line_pitch_mm(BODY) + 3.0
        figures = len(self._figures()) * line_pitch_mm(BODY)
        drawn = self._above_mm + self._over_mm + self._drawn_mm + self._under_drawn_mm
        return head + drawn + BAR_MM + figures + 1.0

    def items(self, at: Point) -> tuple[Item, ...]:
        """Return the block with its top left corner at a point."""
        number, run = self.section.place.number, self.section.place.developed.run
        ident = f"section:{number}"
        y = at.y + VIEW
        title = f"Section {number}: {run.tag}"
        items = [text_item(ident, title, Point(at.x, y), VIEW, bold=True)]
        x = at.x + text_width_mm(title, VIEW, bold=True) + 4.0
        what = f"{state_before(run.state)}{run.words}"
        items.append(text_item(f"{ident}:what", what, Point(x, y)))
        y += 2.0
        for i, line in enumerate(self._heading()):
            y += line_pitch_mm(BODY)
            items.append(text_item(f"{ident}:where:{i}", line, Point(at.x, y)))
        base = y + 3.0 + self._above_mm + self._over_mm + self._drawn_mm
        wide, wall = self.section.inside_mm[0] * self.scale, self.section.wall_mm * self.scale
        origin = Point(at.x + (self.width - wide) / 2, base - wall)
        items += self._drawing(ident, origin)
        items += self._dimensions(ident, Point(origin.x, base - wall))
        y = base + self._under_drawn_mm
        items += self._bar(ident, Point(at.x, y + BAR_MM - 3.0))
        y += BAR_MM
        for i, (line, bold) in enumerate(self._figures()):
            place = Point(at.x, y + BODY + i * line_pitch_mm(BODY))
            items.append(text_item(f"{ident}:figure:{i}", line, place, bold=bold))
        return tuple(items)

    def _drawing(self, ident: str, origin: Point) -> list[Item]:
        section, scale = self.section, self.scale
        widths = widths_for(self.paper)
        run = section.place.developed.run
        paths = outline_paths(section, origin, scale, widths)
        items = [Item(f"{ident}:run", "outline", paths, title=f"{run.tag} {run.words}")]
        for i, laid in enumerate(section.packed.laid):
            is_data = laid.shape.tag in section.data_tags
            centre = Point(origin.x + laid.x * scale, origin.y - laid.y * scale)
            parts = cable_path(laid.shape, centre, scale, widths.symbol, is_data=is_data)
            title = f"{laid.shape.tag}, {laid.shape.width_mm:.1f} mm"
            items.append(Item(f"{ident}:cable:{laid.shape.tag}:{i}", "outline", parts, title=title))
        if section.form == "layer":
            return [*items, *self._tags_above(ident, origin)]
        if self._sides:
            return [*items, *self._tags_beside(ident, origin)]
        return [*items, *self._tags_within(ident, origin)]

    def _tags_within(self, ident: str, origin: Point) -> list[Item]:
        return [
            text_item(
                f"{ident}:tag:{p.shape.tag}:{i}",
                p.shape.tag,
                Point(origin.x + p.x * self.scale, origin.y - p.y * self.scale + BODY / 2),
                anchor="middle",
            )
            for i, p in enumerate(self.section.packed.laid)
        ]

    def _tags_above(self, ident: str, origin: Point) -> list[Item]:
        """Return turned tags over a layer, each with a line to its cable."""
        laid = sorted(self.section.packed.laid, key=lambda p: p.x)
        places = [origin.x + p.x * self.scale for p in laid]
        xs = spread(places, TAG_PITCH_MM, origin.x - 60.0, origin.x + 200.0)
        tall = max((2 * p.shape.radius_mm for p in laid), default=0.0)
        run = self.section.place.developed.run
        top = origin.y - max(tall, run.height_mm) * self.scale
        items: list[Item] = []
        lines: list[Path] = []
        for i, (piece, place, x) in enumerate(zip(laid, places, xs, strict=True)):
            foot = Point(place, origin.y - (piece.y + piece.shape.radius_mm * 0.4) * self.scale)
            bend = Point(place, top - 1.0)
            end = (x, top - FAN_MM + 1.0)
            lines.append(polyline(foot, bend, end, width_mm=widths_for(self.paper).narrow))
            text = Text(
                Point(x + TURNED_MM, top - FAN_MM + 0.2), piece.shape.tag, BODY, turned=True
            )
            items.append(Item(f"{ident}:tag:{piece.shape.tag}:{i}", "text", (text,)))
        return [*items, Item(f"{ident}:leaders", "dim", tuple(lines))]

    def _tags_beside(self, ident: str, origin: Point) -> list[Item]:
        """Return tags left and right of a hollow, each with a line that ends in a dot."""
        wide, tall = (s * self.scale for s in self.section.inside_mm)
        wall = self.section.wall_mm * self.scale
        order = sorted(self.section.packed.laid, key=lambda p: (p.x, p.y))
        half = (len(order) + 1) // 2
        items: list[Item] = []
        parts: list[Path | Circle] = []
        middle = origin.y - tall / 2
        for side, group in ((-1.0, order[:half]), (1.0, order[half:])):
            x = origin.x - wall - SIDE_MM if side < 0 else origin.x + wide + wall + SIDE_MM
            for piece, y in _beside(group, middle):
                at = Point(origin.x + piece.x * self.scale, origin.y - piece.y * self.scale)
                end = (x - side * 0.8, y)
                parts.append(polyline(at, end, width_mm=widths_for(self.paper).narrow))
                parts.append(Circle(at, 0.5, None, fill="black"))
                name = f"{ident}:tag:{piece.shape.tag}:{len(items)}"
                anchor = "end" if side < 0 else "start"
                text = Text(Point(x, y + BODY / 2), piece.shape.tag, BODY, anchor)  # type: ignore[arg-type]
                items.append(Item(name, "text", (text,)))
        return [*items, Item(f"{ident}:leaders", "dim", tuple(parts))]

    @property
    def _under_mm(self) -> float:
        """How far the containment reaches under what the cables lie on, mm of paper."""
        if self.section.place.developed.run.kind == "wire basket":
            return 1.5 * WIRE_MM * self.scale
        return self.section.wall_mm * self.scale

    @property
    def _dims_mm(self) -> float:
        return self._under_mm + (DIM_MM + DIM_STEP_MM if self._spans() else DIM_MM)

    def _spans(self) -> list[tuple[float, float, str]]:
        """Return what the cables take of a tray and what stays free: from, to, words; true mm."""
        section = self.section
        used = section.place.piece.section.used_mm
        if used is None or section.clear_mm is not None or not section.fits:
            return []
        wide = section.inside_mm[0]
        spans = [(0.0, used, f"{used:.1f} used"), (used, wide, f"{wide - used:.1f} free")]
        both_fit = all(
            text_width_mm(words, BODY) <= (b - a) * self.scale - 2.0 for a, b, words in spans
        )
        return spans if both_fit else []

    def _dimensions(self, ident: str, at: Point) -> list[Item]:
        """Return the size of the run and, on a tray, what the cables take and leave of it."""
        section, run = self.section, self.section.place.developed.run
        wall = section.wall_mm
        words = (
            f"bore {run.width_mm:g}" if section.form == "bore" and not wall else f"{run.width_mm:g}"
        )
        if section.form == "trunking":
            words = f"{run.width_mm:g} × {run.height_mm:g}"
        foot = at.y + self._under_mm
        whole = (-wall, section.inside_mm[0] + wall, words)
        rows = [self._spans(), [whole]] if self._spans() else [[whole]]
        items: list[Item] = []
        for row, spans in enumerate(rows):
            y = foot + 7.0 + row * DIM_STEP_MM
            for i, span in enumerate(spans):
                name = f"{ident}:size:{row}:{i}"
                items += self._dimension(name, at.x, (foot + 1.5, y), span)
        return items

    def _dimension(
        self, name: str, left: float, ys: tuple[float, float], span: tuple[float, float, str]
    ) -> list[Item]:
        """Return a dimension line between two places, its words over it or after it."""
        width = widths_for(self.paper).narrow
        x0, x1 = (left + at * self.scale for at in span[:2])
        top, y = ys
        lines = (
            polyline((x0, y), (x1, y), width_mm=width),
            *(polyline((x, top), (x, y + 1.5), width_mm=width) for x in (x0, x1)),
            *(polyline((x - 1, y + 1), (x + 1, y - 1), width_mm=width * 2) for x in (x0, x1)),
        )
        text = Text(Point((x0 + x1) / 2, y - 1.0), span[2], BODY, "middle")
        if text_width_mm(span[2], BODY) > x1 - x0 - 2.0:
            text = Text(Point(x1 + 2.5, y + BODY / 2), span[2], BODY)
        return [Item(f"{name}:lines", "dim", lines), Item(name, "text", (text,))]

    def _bar(self, ident: str, at: Point) -> list[Item]:
        """Return the scale in words and a bar in mm."""
        scale, width = self.scale, widths_for(self.paper).narrow
        sheet = self.paper.split()[0]
        words = f"{scale_words(scale)} @ {sheet}"
        step = next(s for s in BAR_STEPS if s * scale >= 4.0 or s == BAR_STEPS[-1])
        x = at.x + text_width_mm(words, BODY) + 7.0
        boxes = [
            rectangle(
                Box(x + i * step * scale, at.y - 1.4, x + (i + 1) * step * scale, at.y),
                width_mm=width,
                fill="black" if i % 2 == 0 else "white",
            )
            for i in range(5)
        ]
        end = Point(x + 5 * step * scale + 1.5, at.y)
        return [
            text_item(f"{ident}:scale", words, at),
            Item(f"{ident}:bar", "dim", tuple(boxes)),
            text_item(f"{ident}:bar:end", f"{5 * step} mm", end),
        ]


def _holds_tag(piece: Laid, scale: float) -> bool:
    """Tell whether a tag fits inside the outline of its cable."""
    shape = piece.shape
    wide = text_width_mm(shape.tag, BODY) + PAD_MM
    radius, reach = shape.radius_mm * scale, shape.reach_mm * scale
    half_cap = BODY / 2 + PAD_MM / 2
    if radius <= half_cap:
        return False
    chord = 2 * (reach + math.sqrt(radius**2 - half_cap**2))
    return wide <= chord


def _beside(group: Sequence[Laid], middle: float) -> list[tuple[Laid, float]]:
    """Return pieces with heights of their tags: the highest piece at the top."""
    ordered = sorted(group, key=lambda p: (-p.y, p.x))
    first = middle - (len(ordered) - 1) * SIDE_PITCH_MM / 2
    return [(piece, first + i * SIDE_PITCH_MM) for i, piece in enumerate(ordered)]


def scale_words(scale: float) -> str:
    """Return a scale as written: "2:1", "1:2"."""
    return f"{scale:g}:1" if scale >= 1 else f"1:{1 / scale:g}"
