"""An isolator with its supply cable and the tail to the machine."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.details.entry import (
    COLOURS_END_Y,
    WALL_Y,
    columns,
    draw_colours,
    draw_entry,
    fly_lead_x,
    width_mm,
)
from asfitted.layout.details.figure import heading
from asfitted.layout.details.sketch import Sketch
from asfitted.layout.lettering import BODY, line_pitch_mm, wrap
from asfitted.reference.connections import PROTECTIVE, motor_terminal

if TYPE_CHECKING:
    from asfitted.geometry import Point
    from asfitted.layout.details.conductors import CableEnd
    from asfitted.layout.sheet_layout import Item, Paper

POLE_Y = COLOURS_END_Y + 4.0
BAR_Y = POLE_Y + 2.0
BOX_END_Y = POLE_Y + 20.0
RING_Y = BOX_END_Y + 3.0
TAIL_COLOURS_Y = RING_Y + 7.5
MACHINE_Y = TAIL_COLOURS_Y + 4 * line_pitch_mm(BODY) - 2.0
TERMINAL_Y = MACHINE_Y + 4.0
STARTER_SIGN = "direct_on_line_starter"
POLES = {1: "single-pole", 2: "two-pole", 3: "three-pole", 4: "four-pole"}


@dataclass(frozen=True)
class IsolatorFigure:
    """An isolator drawn as a circuit, from the supply cable to the machine's terminals."""

    key: str
    number: int
    tags: tuple[str, ...]
    end: CableEnd
    tail: CableEnd
    poles: int | None
    symbol: str  # sign of what is fed, "" when nothing is recorded beyond the isolator
    is_motor: bool

    height_mm = MACHINE_Y + 28.0

    @property
    def title(self) -> str:
        """What the figure shows."""
        poles = POLES.get(self.poles or 0, "poles not recorded")
        name = f"Isolator, {poles}"
        if self.symbol == STARTER_SIGN:
            return f"{name}, to starter"
        return f"{name}, to {'motor' if self.is_motor else 'machine'}"

    @property
    def width_mm(self) -> float:
        """Width on the sheet, mm."""
        return width_mm(len(self.end.live))

    @property
    def switched(self) -> tuple[str, ...]:
        """Conductors that have a pole: lines first, the neutral only where a pole is left."""
        return self.end.live[: self.poles or len(self.end.live)]

    @property
    def taken_on(self) -> tuple[str, ...]:
        """Live conductors that go on to the machine."""
        return tuple(m for m in self.end.live if m in self.tail.live or not self.tail.construction)

    def draw(self, at: Point, paper: Paper) -> tuple[Item, ...]:
        """Return the items with the figure's top left corner at ``at``."""
        sketch = Sketch(self.key, at, paper)
        heading(sketch, f"{self.number}  {self.title}", self.tags, self.width_mm)
        xs = columns(self.end)
        draw_entry(sketch, self.end, BAR_Y)
        for mark in self.end.live:
            self._conductor(sketch, mark, xs[mark])
        self._handle(sketch, xs)
        self._protective(sketch, xs[PROTECTIVE])
        self._tail(sketch, xs)
        self._machine(sketch, xs)
        right = self.width_mm - 1.0
        sketch.box("box", (1.0, WALL_Y, right, BOX_END_Y), pattern="long_dash_dot")
        sketch.words("box:words", "isolator enclosure", 3.0, WALL_Y + 4.0)
        return tuple(sketch.items)

    def _conductor(self, sketch: Sketch, mark: str, x: float) -> None:
        """Draw a live conductor through its pole, and on to the machine or to its end."""
        goes_on, out = mark in self.taken_on, f"{mark}:in"
        if mark in self.switched:
            sketch.wire(f"{mark}:feed", f"{mark}:in", (x, COLOURS_END_Y), (x, POLE_Y))
            sketch.sign(f"{mark}:pole", "switch_disconnector", x - 5, POLE_Y, title="pole")
            out = f"{mark}:out"
            start = POLE_Y + 10.0
        else:
            start = COLOURS_END_Y
            said = ("solid", "link") if mark == "N" else ("stays", "live")
            sketch.words(f"{mark}:through", said, x + 1.3, POLE_Y + 4.0)
        finish = TERMINAL_Y - 1.0 if goes_on else POLE_Y + 13.0
        sketch.wire(f"{mark}:load", out, (x, start), (x, finish))
        if not goes_on:
            sketch.terminal(f"{mark}:ends", x, finish + 1.0)
            sketch.words(f"{mark}:ends:words", ("ends", "here"), x + 2.0, finish + 1.2)

    def _handle(self, sketch: Sketch, xs: dict[str, float]) -> None:
        """Draw the link of the poles, the handle and its lock."""
        last = xs[self.switched[-1]] - 1.25
        sketch.line("link", (17.0, POLE_Y + 5.0), (last, POLE_Y + 5.0), pattern="dashed")
        sketch.sign("lock", "padlock", 7.0, POLE_Y, title="lock off here")
        sketch.words("lock:words", ("lock off", "here"), 3.0, POLE_Y + 13.0)

    def _protective(self, sketch: Sketch, x: float) -> None:
        """Draw the earth terminal and the conductor from it to the machine."""
        armoured = self.end.construction == "armoured"
        right = fly_lead_x(self.end) + 2.0 if armoured else x + 8.0
        sketch.bar("earth-bar", f"{PROTECTIVE}:in", x - 4.0, right, BAR_Y)
        sketch.words("earth-bar:words", ("earth", "terminal"), x + 1.5, BAR_Y + 4.2)
        spare = (self.poles or 0) - len(self.end.live)
        if spare > 0:
            said = ("one pole", "not used") if spare == 1 else (f"{spare} poles", "not used")
            sketch.words("spare-pole", said, 3.0, POLE_Y - 8.6)
        net = f"{PROTECTIVE}:in"
        sketch.wire(f"{PROTECTIVE}:load", net, (x, BAR_Y), (x, TERMINAL_Y - 1.0))

    def _tail(self, sketch: Sketch, xs: dict[str, float]) -> None:
        """Draw the ring round the conductors of the tail, its name and its colours."""
        marks = (*self.taken_on, PROTECTIVE)
        sketch.ring("tail", (xs[marks[0]] - 3.0, RING_Y, xs[PROTECTIVE] + 3.0, RING_Y + 3.0))
        sketch.words("tail:words", "tail", xs[marks[0]] - 5.0, RING_Y + 2.8, anchor="end")
        if not self.tail.construction:
            return
        shown = {m: x for m, x in xs.items() if m in marks}
        draw_colours(sketch, self.tail, shown, TAIL_COLOURS_Y)
        if not self.tail.has_earth_core:
            said = "armour" if self.tail.cpc == "armour" else "not recorded"
            sketch.words(f"{PROTECTIVE}:tail", said, xs[PROTECTIVE] + 1.3, TAIL_COLOURS_Y)

    def _machine(self, sketch: Sketch, xs: dict[str, float]) -> None:
        """Draw the machine's terminals in their box, with the sign of the machine."""
        for mark in (*self.taken_on, PROTECTIVE):
            x = xs[mark]
            sketch.terminal(f"{mark}:terminal", x, TERMINAL_Y)
            sketch.words(
                f"{mark}:terminal:mark",
                self._terminal_mark(mark),
                x,
                TERMINAL_Y + 5.6,
                anchor="middle",
                bold=True,
            )
        if self.symbol:
            sketch.sign("machine", self.symbol, 8.0, MACHINE_Y + 3.0, title="machine")
        sketch.box("machine-box", (1.0, MACHINE_Y, self.width_mm - 1.0, self.height_mm - 1.0))
        said = "terminals as its maker marks them"
        if self.is_motor:
            said = "star or delta as its rating plate says"
        tail = f"tail: {self.tail.words}"
        if self.tail.drop and self.tail.drop != "clipped":
            tail += f" in {self.tail.drop}"
        lines = [*wrap(tail, self.width_mm - 6.0, BODY)[:2], said]
        y = self.height_mm - 3.6 - (len(lines) - 1) * line_pitch_mm(BODY)
        sketch.words("machine:words", lines, 3.0, y)

    def _terminal_mark(self, mark: str) -> str:
        if mark == PROTECTIVE:
            return "earth"
        return (motor_terminal(mark) if self.is_motor else "") or mark
