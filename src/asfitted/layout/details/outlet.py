"""A socket-outlet of IEC 60309 with its armoured cable, its own RCD and its contacts."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.details.entry import (
    COLOURS_END_Y,
    WALL_Y,
    columns,
    draw_entry,
    fly_lead_x,
    width_mm,
)
from asfitted.layout.details.figure import HEAD_MM, heading
from asfitted.layout.details.sketch import Sketch
from asfitted.layout.lettering import BODY, TAG
from asfitted.reference.connections import PROTECTIVE, five_pin_face, residual_device_terminals

if TYPE_CHECKING:
    from asfitted.geometry import Point
    from asfitted.layout.details.conductors import CableEnd
    from asfitted.layout.sheet_layout import Item, Paper

RCD_Y = COLOURS_END_Y + 4.0
RING_Y = RCD_Y + 13.0
LINK_X = 26.0
BAR_Y = RCD_Y + 2.0
CONTACT_MM = 10.0
NUMBER_WORDS = {3: "Three-pin", 5: "Five-pin"}


@dataclass(frozen=True)
class OutletFigure:
    """An outlet drawn as a circuit, from the cable to the contacts."""

    key: str
    number: int
    tags: tuple[str, ...]
    end: CableEnd
    has_rcd: bool

    @property
    def pins(self) -> int:
        """How many contacts the outlet has."""
        return len(self.end.live) + 1

    @property
    def title(self) -> str:
        """What the figure shows."""
        own = " with its own RCD" if self.has_rcd else ""
        return f"{NUMBER_WORDS.get(self.pins, f'{self.pins}-pin')} socket-outlet{own}"

    @property
    def width_mm(self) -> float:
        """Width on the sheet, mm."""
        return width_mm(len(self.end.live))

    @property
    def contact_y(self) -> float:
        """Top of the row of contacts, mm."""
        return RING_Y + 9.0 if self.has_rcd else COLOURS_END_Y + 14.0

    @property
    def height_mm(self) -> float:
        """Height on the sheet, mm."""
        return self.contact_y + CONTACT_MM + 13.0

    def draw(self, at: Point, paper: Paper) -> tuple[Item, ...]:
        """Return the items with the figure's top left corner at ``at``."""
        sketch = Sketch(self.key, at, paper)
        heading(sketch, f"{self.number}  {self.title}", self.tags, self.width_mm)
        xs = columns(self.end)
        draw_entry(sketch, self.end, BAR_Y)
        if self.has_rcd:
            self._residual_device(sketch, xs)
        for mark, x in xs.items():
            self._contact(sketch, mark, x)
        self._earth_bar(sketch, xs[PROTECTIVE])
        bottom = self.height_mm - 1.0
        sketch.box("box", (1.0, WALL_Y, self.width_mm - 1.0, bottom), pattern="long_dash_dot")
        sketch.words("box:words", "outlet enclosure", 3.0, WALL_Y + 4.0)
        return tuple(sketch.items)

    def _residual_device(self, sketch: Sketch, xs: dict[str, float]) -> None:
        """Draw a pole in each live conductor, the ring round them all, the link and the button."""
        live = [xs[mark] for mark in self.end.live]
        for mark in self.end.live:
            x = xs[mark]
            sketch.wire(f"{mark}:feed", f"{mark}:in", (x, COLOURS_END_Y), (x, RCD_Y))
            sketch.sign(f"{mark}:pole", "switch_disconnector", x - 5, RCD_Y, title="RCD pole")
            for said, y in zip(_terminals(mark, self.pins), (RCD_Y + 1.8, RCD_Y + 11), strict=True):
                sketch.words(f"{mark}:terminal:{y:.0f}", said, x + 1.3, y)
        ring = (live[0] - 4.0, RING_Y, live[-1] + 4.0, RING_Y + 4.0)
        sketch.ring("ring", ring)
        link = ((ring[0], RING_Y + 2.0), (LINK_X, RING_Y + 2.0), (LINK_X, RCD_Y + 5.0))
        sketch.line("link", *link, (live[-1] - 1.25, RCD_Y + 5.0), pattern="dashed")
        sketch.words("rcd:words", "RCD", 3.0, RCD_Y + 4.0, TAG, bold=True)
        sketch.box("test", (9.0, RCD_Y + 7.2, 15.0, RCD_Y + 13.2), wide=True)
        sketch.words("test:sign", "T", 12.0, RCD_Y + 11.5, anchor="middle", bold=True)
        middle = RCD_Y + 10.2
        sketch.line("test:link", (15.0, middle), (LINK_X, middle), pattern="dashed")
        sketch.words("test:words", ("test", "button"), 3.0, RCD_Y + 17.5)

    def _contact(self, sketch: Sketch, mark: str, x: float) -> None:
        """Draw one contact with its mark, and the conductor to it."""
        y = self.contact_y
        protective = mark == PROTECTIVE
        if protective:
            start, net = BAR_Y, f"{mark}:in"
        else:
            start = RCD_Y + 10.0 if self.has_rcd else COLOURS_END_Y
            net = f"{mark}:out" if self.has_rcd else f"{mark}:in"
        sketch.wire(f"{mark}:contact-lead", net, (x, start), (x, y))
        sketch.sign(f"{mark}:contact", "contact_female", x - 5, y, title=f"contact {mark}")
        said = "earth" if protective else mark
        sketch.words(f"{mark}:mark", said, x, y + CONTACT_MM + 3.2, TAG, anchor="middle", bold=True)
        sketch.words(f"{mark}:contact:words", "contact", x, y + CONTACT_MM + 8.2, anchor="middle")

    def _earth_bar(self, sketch: Sketch, x: float) -> None:
        right = fly_lead_x(self.end) + 2.0 if self.end.construction == "armoured" else x + 8.0
        sketch.bar("earth-bar", f"{PROTECTIVE}:in", x - 4.0, right, BAR_Y)
        sketch.words("earth-bar:words", ("earth", "terminal"), x + 1.5, BAR_Y + 4.2)


def _terminals(mark: str, pins: int) -> tuple[str, str]:
    """Return the terminal marks of a pole; a two-pole device is marked by what it carries."""
    if pins < 4:
        return ("1", "2") if mark == "L" else ("N", "N")
    return residual_device_terminals(mark)


FACE_MM = 44.0
FACE_MARK_MM = FACE_MM * 0.44 + 4.5


@dataclass(frozen=True)
class FaceFigure:
    """The front of a five-pin outlet, as the person who wires it sees it."""

    key: str
    number: int
    tags: tuple[str, ...]
    volts: float

    width_mm = 84.0
    height_mm = HEAD_MM + FACE_MM + 26.0

    def draw(self, at: Point, paper: Paper) -> tuple[Item, ...]:
        """Return the items with the figure's top left corner at ``at``."""
        sketch = Sketch(self.key, at, paper)
        heading(sketch, f"{self.number}  Front of the five-pin outlet", self.tags, self.width_mm)
        sequence, clock, colour = five_pin_face(self.volts)
        left, top = self.width_mm / 2 - FACE_MM / 2, HEAD_MM + 7.0
        sketch.sign("face", "socket_face_five_pin", left, top, FACE_MM)
        centre = (left + FACE_MM / 2, top + FACE_MM / 2)
        for i, mark in enumerate(sequence[1:], start=1):
            angle = math.radians(90 + 72 * i)
            x = centre[0] + FACE_MARK_MM * math.cos(angle)
            y = centre[1] + FACE_MARK_MM * math.sin(angle) + TAG / 2
            sketch.words(f"face:{mark}", mark, x, y, TAG, anchor="middle", bold=True)
        foot = top + FACE_MM + 5.0
        sketch.words("face:earth", "earth, at the key", centre[0], foot, anchor="middle")
        words = (
            f"{self.volts:g} V between lines: {colour},",
            f"earth contact at {clock.rstrip('h')} o'clock, seen from the front",
        )
        sketch.words("face:words", words, centre[0], foot + 5.5, BODY, anchor="middle")
        return tuple(sketch.items)
