"""Which boards, or which ways of a wide board, go on which sheet, and at what pitch.

A board is cut only when it is wider than a sheet, and then between two ways. Boards keep the order
of feeding. The widest pitch that the sheet allows is taken: it gives the shortest columns.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.layout.single_line.label import (
    CUT_BOX_MM,
    DIRECT_BOX_MM,
    LEAST_BOX_MM,
    label_height_mm,
)
from asfitted.layout.single_line.parts import BREAK_MM, Part, SheetFit, direct_board
from asfitted.layout.single_line.room import (
    FLAG_ROW,
    INTAKE_ROW,
    column_width_mm,
    column_words,
    least_pitch_mm,
    rows_for,
)
from asfitted.layout.single_line.side import AREA, SIDE_MM, side_holds
from asfitted.layout.single_line.tree import board_trees, shortened_chain

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import Paper
    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.tree import BoardTree, Column

PAPER: Paper = "A3"
MOST_PITCH_MM = 44.0
BOX_PAD = 2.0  # edge of an enclosure to its first column
BOX_GAP = 8.0  # between two enclosures
MOST_LEVELS = 4


def part_width_mm(part: Part, pitch_mm: float, *, is_direct: bool) -> float:
    """Return the width of an enclosure in mm."""
    least = DIRECT_BOX_MM if is_direct else LEAST_BOX_MM
    if part.number > 1:
        least = CUT_BOX_MM
    columns = sum(column_width_mm(words, pitch_mm) for words in part.words)
    return max(columns + 2 * BOX_PAD + part.breaks * BREAK_MM, least)


def split_over_sheets(model: Model) -> tuple[SheetFit, ...]:
    """Return the sheets of the diagram in order.

    Raises:
        DoesNotFitError: one single way does not fit a sheet.
    """
    waiting = [_whole(model, tree) for tree in board_trees(model.installation)]
    sheets: list[SheetFit] = []
    while waiting:
        has_intake = not sheets
        taken: SheetFit | None = None
        count = 0
        while count < len(waiting):
            trial = fit(model, waiting[: count + 1], has_intake=has_intake)
            if trial is None:
                break
            taken, count = trial, count + 1
        if taken is None and has_intake and _is_better_alone(model, waiting[0]):
            taken = fit(model, [], has_intake=True)
        if taken is None:
            taken, rest = _cut(model, waiting[0], has_intake=has_intake)
            waiting[:1] = [taken.parts[0], *rest]
            count = 1
        sheets.append(taken)
        waiting = waiting[count:]
    return _counted(sheets)


def _is_better_alone(model: Model, part: Part) -> bool:
    """Tell whether the intake takes a sheet of its own: no board hangs from it, or it fits then."""
    if not direct_board(model, [part], has_intake=True):
        return True
    return fit(model, [part], has_intake=False) is not None


def _whole(model: Model, tree: BoardTree) -> Part:
    columns = tuple(_at_most(column, MOST_LEVELS) for column in tree.columns)
    return Part(tree.tag, columns, tuple(column_words(model, c) for c in columns))


def _at_most(column: Column, levels: int) -> Column:
    return replace(column, stages=shortened_chain(column.stages, levels))


def fit(model: Model, parts: Sequence[Part], *, has_intake: bool) -> SheetFit | None:
    """Return how parts stand on one sheet, or None when they do not fit."""
    direct = direct_board(model, parts, has_intake=has_intake)
    if has_intake and parts and not direct:
        return None
    words = [w for part in parts for w in part.words]
    pitch = _pitch(parts, AREA.width - SIDE_MM, least_pitch_mm(words), direct)
    if pitch is None or not side_holds(model, parts, has_intake=has_intake):
        return None
    label_mm = 0.0
    for part in parts:
        box_mm = part_width_mm(part, pitch, is_direct=part.tag == direct)
        label_mm = max(label_mm, label_height_mm(model, part, box_mm))
    rows = rows_for(words, pitch, label_mm, is_cut=any(part.breaks for part in parts))
    flags = any(part.number == 1 and part.tag != direct for part in parts)
    band = max(INTAKE_ROW if has_intake else 0.0, FLAG_ROW if flags else 0.0)
    if parts and band + rows.total > AREA.height:
        return None
    return SheetFit(tuple(parts), has_intake, pitch, rows, band)


def _pitch(parts: Sequence[Part], width: float, least: float, direct: str) -> float | None:
    """Return the widest pitch in whole mm at which the enclosures stand side by side."""
    pitch = MOST_PITCH_MM
    while pitch >= least:
        widths = [part_width_mm(part, pitch, is_direct=part.tag == direct) for part in parts]
        if sum(widths) + BOX_GAP * max(0, len(parts) - 1) <= width:
            return pitch
        pitch -= 1.0
    return None


def _cut(model: Model, part: Part, *, has_intake: bool) -> tuple[SheetFit, list[Part]]:
    """Return the sheet with as many first ways of a board as fit, and what is left of the board.

    A board that is cut has shorter chains than one that is not: more of its ways share a sheet.
    """
    for levels in range(MOST_LEVELS - 1, 0, -1):
        columns = tuple(_at_most(column, levels) for column in part.columns)
        shorter = replace(
            part, columns=columns, words=tuple(column_words(model, c) for c in columns)
        )
        whole = fit(model, [shorter], has_intake=has_intake)
        if whole is not None:
            return whole, []
        ends = [
            e for e in _way_ends(shorter) if _first_ways(model, shorter, e, has_intake=has_intake)
        ]
        if ends:
            sheets = math.ceil(len(columns) / ends[-1])
            end = next((e for e in ends if e >= len(columns) / sheets), ends[-1])
            made = _first_ways(model, shorter, end, has_intake=has_intake)
            if made is not None:
                return made, [_later_ways(part, end)]
    raise DoesNotFitError(f"no A3 sheet holds the first way of {part.tag} with all its words")


def _first_ways(model: Model, part: Part, end: int, *, has_intake: bool) -> SheetFit | None:
    """Return the sheet with the columns of a part up to ``end``, or None when they do not fit."""
    first = replace(part, columns=part.columns[:end], words=part.words[:end], count=part.number + 1)
    return fit(model, [first], has_intake=has_intake)


def _later_ways(part: Part, end: int) -> Part:
    """Return what is left of a part from column ``end`` on."""
    number = part.number + 1
    return replace(
        part, columns=part.columns[end:], words=part.words[end:], number=number, count=number
    )


def _way_ends(part: Part) -> list[int]:
    """Return the places where the board may be cut: after the last pole of a way."""
    numbers = [(c.ways[0].number, c.ways[-1].number) for c in part.columns]
    return [i for i in range(1, len(numbers)) if numbers[i - 1][1] != numbers[i][0]]


def _counted(sheets: list[SheetFit]) -> tuple[SheetFit, ...]:
    """Return the sheets with the true number of parts in every part of a cut board."""
    most: dict[str, int] = {}
    for sheet in sheets:
        for part in sheet.parts:
            most[part.tag] = max(most.get(part.tag, 1), part.number)
    return tuple(
        replace(s, parts=tuple(replace(p, count=most[p.tag]) for p in s.parts)) for s in sheets
    )
