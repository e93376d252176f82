"""Room: how wide a column must be and how high each row, from the words that will stand there.

Every row has one height over all boards of a sheet, so that devices, cable texts, signs of loads
and names each stand on one line.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, wrap
from asfitted.layout.single_line import words as say
from asfitted.layout.single_line.phrases import (
    least_run_mm,
    set_phrases,
    widest_word_mm,
    width_mm,
    wrapped,
)

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.tree import Column

SIGN = 10.0  # side of the box of a sign
STROKES = 7.0  # the three oblique strokes are drawn at this size
SPINE = 5.6  # left edge of a column to its wire
PAD = 0.8  # right edge of the words of a column to the next column
TEXT_X = 5.6  # wire to the words right of a sign
DEVICE_X = 2.2  # wire to the words right of a device
TURNED_X = 0.9  # wire to the nearest edge of a turned line
WAY_ROW = 7.0  # busbar to the device: the way's tag stands here
LEAST_LEG = 16.0
BLANK_X, LEAST_BLANK = 1.0, 14.0  # left edge of blank ways to their names; their least width
LEG_ENDS = 2.2  # free wire at the two ends of a turned text
FLAG_ROW = 14.0  # above a board that another sheet feeds
PITCH = line_pitch_mm(BODY)
TAG_PITCH = line_pitch_mm(TAG)


@dataclass(frozen=True)
class StageWords:
    """Words of one sign: the text of the line to it, its tags, what it is."""

    leg: tuple[str, ...]
    tags: str
    points: tuple[str, ...]
    runs_through: bool


@dataclass(frozen=True)
class ColumnWords:
    """All words of one column."""

    ways: str
    device: tuple[str, ...]
    stages: tuple[StageWords, ...]
    name: str
    place: tuple[str, ...]
    figures: tuple[str, ...]
    is_blank: bool = False


@dataclass(frozen=True)
class Rows:
    """Heights in mm of the rows of a board at one pitch.

    ``stages`` holds the rows of the signs before the last, so it is one shorter than ``legs``.
    """

    header: float
    device: float
    legs: tuple[float, ...]
    stages: tuple[float, ...]
    signs: float
    points: float
    names: float
    figures: float

    @property
    def total(self) -> float:
        """Height of a board from the top of its enclosure to the last line of words."""
        above = self.header + self.device + sum(self.legs) + sum(self.stages)
        return above + self.signs + self.points + self.names + self.figures


def column_words(model: Model, column: Column) -> ColumnWords:
    """Return every word of a column."""
    ways = say.way_words(column.ways)
    if column.kind == "blank":
        return ColumnWords(ways, ("blank",), (), "", (), (), is_blank=True)
    if column.kind == "spare":
        return ColumnWords(ways, tuple(say.spare_phrases(column.ways[0])), (), "", (), ())
    circuit = model.installation.circuits[column.circuit]
    stages = tuple(
        StageWords(
            tuple(say.leg_phrases(model, circuit, stage, is_first=i == 0)),
            stage.feeds or say.tags_words(stage.points),
            tuple(say.point_phrases(model, circuit, stage)),
            stage.runs_through,
        )
        for i, stage in enumerate(column.stages)
    )
    return ColumnWords(
        ways,
        tuple(say.device_phrases(circuit.device)),
        stages,
        say.name_words(model, column),
        tuple(say.place_phrases(model, column)),
        tuple(say.figure_phrases(model, circuit)),
    )


def least_pitch_mm(columns: Sequence[ColumnWords]) -> float:
    """Return the narrowest pitch at which every single word fits its column, in whole mm."""
    foot = [t for c in columns for t in (*c.place, *(c.stages[-1].points if c.stages else ()))]
    passing = [t for c in columns for stage in c.stages[:-1] for t in stage.points]
    figures = max((width_mm(t, BODY) for c in columns for t in c.figures), default=0.0)
    device = [t for c in columns for t in c.device]
    tags = [stage.tags for c in columns for stage in c.stages]
    used = [c.ways for c in columns if not c.is_blank]
    ways = max((width_mm(way, TAG, bold=True) for way in used), default=0.0)
    needs = (
        max(widest_word_mm(foot, BODY), figures) + 0.8 + PAD,
        widest_word_mm([c.name for c in columns], BODY, bold=True) + 0.8 + PAD,
        widest_word_mm(passing, BODY) + SPINE + DEVICE_X + PAD,
        max((width_mm(t, BODY) for t in device), default=0.0) + SPINE + DEVICE_X + PAD,
        max((width_mm(t, TAG, bold=True) for tag in tags for t in tag.split()), default=0.0)
        + SPINE
        + TEXT_X
        + PAD,
        ways + SPINE + 1.2 + PAD,
        22.0,
    )
    return float(math.ceil(max(needs)))


def column_width_mm(column: ColumnWords, pitch_mm: float) -> float:
    """Return the width of a column: blank ways need no more than their names."""
    if not column.is_blank:
        return pitch_mm
    widest = max(width_mm(word, TAG, bold=True) for word in column.ways.split())
    return max(LEAST_BLANK, widest + BLANK_X + PAD)


def turned_lines(pitch_mm: float) -> int:
    """Return how many turned lines a column holds: one left of its wire, the rest right of it."""
    return 1 + int((pitch_mm - SPINE - TURNED_X - PAD) // PITCH)


def foot_width_mm(pitch_mm: float) -> float:
    """Return the width of the words under a sign, mm."""
    return pitch_mm - 0.8 - PAD


def beside_width_mm(pitch_mm: float) -> float:
    """Return the width of the words right of a sign, mm."""
    return pitch_mm - SPINE - TEXT_X - PAD


def device_width_mm(pitch_mm: float) -> float:
    """Return the width of the words right of a device, mm."""
    return pitch_mm - SPINE - DEVICE_X - PAD


def tag_lines(stage: StageWords, width: float) -> list[str]:
    """Return the tags of a sign in lines of a width."""
    return wrap(stage.tags, width, TAG, bold=True) if stage.tags else []


def rows_for(
    columns: Sequence[ColumnWords], pitch_mm: float, label_mm: float, *, is_cut: bool = False
) -> Rows:
    """Return the least height of each row at a pitch.

    Args:
        columns: every column that shares the rows.
        pitch_mm: width of a column, mm.
        label_mm: height of the corner label, the most of any board, mm.
        is_cut: a flag stands at an end of a busbar, so the label keeps clear of it.
    """
    levels = max((len(c.stages) for c in columns), default=0)
    lines = turned_lines(pitch_mm)
    legs = tuple(
        max([LEAST_LEG, *(_leg_mm(c, level, lines) for c in columns)]) for level in range(levels)
    )
    stages = tuple(
        max([SIGN, *(_beside_mm(c, level, pitch_mm) for c in columns)])
        for level in range(levels - 1)
    )
    device_lines = max(
        (len(set_phrases(c.device, device_width_mm(pitch_mm), BODY, join=" ")) for c in columns),
        default=0,
    )
    foot = foot_width_mm(pitch_mm)
    beside = beside_width_mm(pitch_mm)
    tags = max((len(tag_lines(c.stages[-1], beside)) for c in columns if c.stages), default=0)
    points = max((len(point_lines(c, pitch_mm)) for c in columns), default=0)
    names = max(
        (
            len(wrapped(c.name, foot, BODY, bold=True)) + len(set_phrases(c.place, foot, BODY))
            for c in columns
        ),
        default=0,
    )
    return Rows(
        header=max(SIGN + 6.0, label_mm + 1.2 + (2.5 if is_cut else 0.0)),
        device=WAY_ROW + max(SIGN + STROKES, device_lines * PITCH) + 2.5,
        legs=legs,
        stages=stages,
        signs=max(SIGN, 1.0 + tags * TAG_PITCH),
        points=points * PITCH + 2.0,
        names=names * PITCH + 1.0,
        figures=max((len(c.figures) for c in columns), default=0) * PITCH + 1.0,
    )


def point_lines(column: ColumnWords, pitch_mm: float) -> list[str]:
    """Return the lines under the last sign of a column: what it is."""
    if not column.stages:
        return []
    return set_phrases(column.stages[-1].points, foot_width_mm(pitch_mm), BODY)


def _leg_mm(column: ColumnWords, level: int, lines: int) -> float:
    if level >= len(column.stages):
        return 0.0
    return least_run_mm(column.stages[level].leg, lines, BODY) + LEG_ENDS


def _beside_mm(column: ColumnWords, level: int, pitch_mm: float) -> float:
    """Return the height of a sign that is not the last of its chain, with its words under it."""
    if level >= len(column.stages) - 1:
        return 0.0
    stage = column.stages[level]
    lines = len(set_phrases(stage.points, device_width_mm(pitch_mm), BODY)) * PITCH
    if stage.runs_through:
        tags = len(tag_lines(stage, beside_width_mm(pitch_mm))) * TAG_PITCH
        return max(SIGN, tags) + lines + 0.6
    return SIGN + len(tag_lines(stage, device_width_mm(pitch_mm))) * TAG_PITCH + lines + 1.5
