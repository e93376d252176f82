"""A row of the data diagram with its words broken into lines and its legs at their heights."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.data_diagram.hard_wrap import hard_wrap
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm

if TYPE_CHECKING:
    from asfitted.layout.data_diagram.columns import Columns
    from asfitted.layout.data_diagram.rows import LegWords, LinkRow

LINE = line_pitch_mm(BODY)
LEAST_FIRST_MM = 6.0
LEAST_PITCH_MM = 10.0
ROW_GAP_MM = 4.0
CLEAR = 1.4  # between a leg and its words
PORT_PAD = 1.8


@dataclass(frozen=True)
class MeasuredLeg:
    """A leg with its words in lines; ``y_mm`` is its height below the top of the row."""

    leg: LegWords
    y_mm: float
    above: tuple[str, ...]
    below: tuple[str, ...]
    port: tuple[str, ...]

    @property
    def port_mm(self) -> float:
        """Height of its port box."""
        return (len(self.port) - 1) * LINE + BODY + 2 * PORT_PAD


@dataclass(frozen=True)
class MeasuredRow:
    """A row ready to be placed; ``height_mm`` holds the gap below it."""

    row: LinkRow
    tag: tuple[str, ...]
    facts: tuple[str, ...]
    legs: tuple[MeasuredLeg, ...]
    height_mm: float


def measured(row: LinkRow, columns: Columns) -> MeasuredRow:
    """Return a row with every word in a line that fits its column."""
    tag = hard_wrap(f"{row.device}  {row.state}".rstrip(), columns.facts_mm, TAG, bold=True)
    if row.is_patch:
        tag = []
    facts = [line for fact in row.facts for line in hard_wrap(fact, columns.facts_mm, BODY)]
    legs: list[MeasuredLeg] = []
    y = LEAST_FIRST_MM
    for leg in row.legs:
        one = _leg(leg, columns, 0.0)
        above = len(one.above) * LINE + CLEAR
        if legs:
            last = legs[-1]
            under = max(len(last.below) * LINE + CLEAR + 1.0, last.port_mm / 2)
            pitch = max(under + max(above, one.port_mm / 2) + 0.6, LEAST_PITCH_MM)
            y = last.y_mm + pitch
        else:
            y = max(above, one.port_mm / 2, LEAST_FIRST_MM)
        legs.append(MeasuredLeg(leg, y, one.above, one.below, one.port))
    beside = len(tag) * line_pitch_mm(TAG) + len(facts) * LINE + 1.0
    deep = y + 5.0
    if legs:
        deep = y + max(len(legs[-1].below) * LINE + CLEAR + 1.0, legs[-1].port_mm / 2, 5.0)
    height = max(beside, deep) + ROW_GAP_MM
    return MeasuredRow(row, tuple(tag), tuple(facts), tuple(legs), height)


def _leg(leg: LegWords, columns: Columns, y_mm: float) -> MeasuredLeg:
    room = columns.words_mm
    return MeasuredLeg(
        leg,
        y_mm,
        tuple(hard_wrap(leg.above, room, BODY)) if leg.above else (),
        tuple(hard_wrap(leg.below, room, BODY)) if leg.below else (),
        tuple(hard_wrap(leg.port, columns.port_mm - 3.0, BODY)),
    )
