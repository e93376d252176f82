"""Which boards, or which ways of a wide board, go on which sheet, and at what pitch.

A board is cut only when it is wider than a sheet, and then between two ways. Boards keep the order
of feeding. The widest pitch that the sheet allows is taken: it gives the shortest columns.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
from asfitted.layout.single_line.earth_rows import intake_height_mm
from asfitted.layout.single_line.label import (
    CUT_BOX_MM,
    DIRECT_BOX_MM,
    LEAST_BOX_MM,
    label_height_mm,
)
from asfitted.layout.single_line.parts import (
    BREAK_MM,
    Part,
    SheetFit,
    Shown,
    direct_board,
)
from asfitted.layout.single_line.room import (
    FLAG_ROW,
    column_width_mm,
    column_words,
    least_pitch_mm,
    rows_for,
)
from asfitted.layout.single_line.sheet_rooms import board_rooms, whole_room
from asfitted.layout.single_line.side import side_holds
from asfitted.layout.single_line.tree import board_trees, shortened_chain

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.sheet_rooms import SheetRoom
    from asfitted.layout.single_line.tree import BoardTree, Column

MOST_PITCH_MM = 44.0
LAST_PITCH_MM = 120.0  # for a way with more words than an ordinary column holds
BOX_PAD = 2.0  # edge of an enclosure to its first column
BOX_GAP = 8.0  # between two enclosures
MOST_LEVELS = 4
WORTH_SHORTENING = 2  # chains are shortened when so many times as many ways share a sheet
MOST_MISSES = 2


def part_width_mm(part: Part, pitch_mm: float, *, is_direct: bool) -> float:
    """Return the width of an enclosure in mm."""
    least = DIRECT_BOX_MM if is_direct else LEAST_BOX_MM
    if part.number > 1:
        least = CUT_BOX_MM
    columns = sum(column_width_mm(words, pitch_mm) for words in part.words)
    return max(columns + 2 * BOX_PAD + part.breaks * BREAK_MM, least)


def split_over_sheets(model: Model) -> tuple[SheetFit, ...]:
    """Return the sheets of the diagram in order.

    A job with one board that fits stands on one sheet with its intake; any other has its intake on
    the distribution overview.

    Raises:
        DoesNotFitError: one single way does not fit a sheet.
    """
    waiting = [_whole(model, tree) for tree in board_trees(model.installation)]
    if len(waiting) == 1:
        single = fit(model, waiting, whole_room(model), has_intake=True)
        if single is not None:
            return (single,)
    sheets: list[SheetFit] = []
    while waiting:
        taken = _most_boards(model, waiting)
        count = 1 if taken is None else len(taken.parts)
        if taken is None:
            taken, rest = _cut(model, waiting[0])
            waiting[:1] = [taken.parts[0], *rest]
        sheets.append(taken)
        waiting = waiting[count:]
    return _counted(sheets)


def _most_boards(model: Model, waiting: list[Part]) -> SheetFit | None:
    """Return the sheet that takes the most of the waiting boards, whole; None if not even one."""
    best: SheetFit | None = None
    for room in board_rooms(model):
        for count in range(1, len(waiting) + 1):
            trial = fit(model, waiting[:count], room)
            if trial is None:
                break
            if best is None or trial.columns > best.columns:
                best = trial
    return best


def _whole(model: Model, tree: BoardTree) -> Part:
    columns = tuple(_at_most(column, MOST_LEVELS) for column in tree.columns)
    return Part(tree.tag, columns, tuple(column_words(model, c) for c in columns))


def _at_most(column: Column, levels: int) -> Column:
    return replace(column, stages=shortened_chain(column.stages, levels))


def fit(
    model: Model,
    parts: Sequence[Part],
    room: SheetRoom,
    *,
    has_intake: bool = False,
    most_pitch_mm: float = MOST_PITCH_MM,
) -> SheetFit | None:
    """Return how parts stand on one sheet, or None when they do not fit."""
    direct = direct_board(model, parts, has_intake=has_intake)
    if has_intake and not direct:
        return None
    words = [w for part in parts for w in part.words]
    pitch = _pitch(parts, room.area.width, least_pitch_mm(words), most_pitch_mm, direct)
    if pitch is None:
        return None
    if room.has_side and not side_holds(model, Shown(tuple(parts), has_intake)):
        return None
    label_mm = 0.0
    for part in parts:
        is_direct = part.tag == direct
        box_mm = part_width_mm(part, pitch, is_direct=is_direct)
        label_mm = max(label_mm, label_height_mm(model, part, box_mm, is_direct=is_direct))
    rows = rows_for(words, pitch, label_mm, is_cut=any(part.breaks for part in parts))
    flags = any(part.number == 1 and part.tag != direct for part in parts)
    band = max(intake_height_mm(model) if has_intake else 0.0, FLAG_ROW if flags else 0.0)
    if band + rows.total > room.area.height:
        return None
    return SheetFit(tuple(parts), room, has_intake, pitch, rows, band)


def _pitch(
    parts: Sequence[Part], width: float, least: float, most: float, direct: str
) -> float | None:
    """Return the widest pitch in whole mm at which the enclosures stand side by side."""
    pitch = most
    while pitch >= least:
        widths = [part_width_mm(part, pitch, is_direct=part.tag == direct) for part in parts]
        if sum(widths) + BOX_GAP * max(0, len(parts) - 1) <= width:
            return pitch
        pitch -= 1.0
    return None


def _cut(model: Model, part: Part) -> tuple[SheetFit, list[Part]]:
    """Return the sheet with as many first ways of a board as fit, and what is left of the board.

    A board that is cut may have shorter chains than one that is not, when twice as many of its
    ways share a sheet then. A way that no sheet holds at the usual pitch gets a wider column.
    """
    found = [
        cut
        for levels in range(MOST_LEVELS - 1, 0, -1)
        if (cut := _cut_at(model, part, levels, MOST_PITCH_MM)) is not None
    ]
    if not found and (last := _cut_at(model, part, 1, LAST_PITCH_MM)) is not None:
        found = [last]
    if not found:
        raise DoesNotFitError(f"no sheet holds the first way of {part.tag} with all its words")
    most = max(sheet.columns for sheet, _ in found)
    return next(cut for cut in found if WORTH_SHORTENING * cut[0].columns >= most)


def _cut_at(
    model: Model, part: Part, levels: int, most_pitch_mm: float
) -> tuple[SheetFit, list[Part]] | None:
    """Return the first sheet of a part and the rest, with chains of so many signs; or None."""
    columns = tuple(_at_most(column, levels) for column in part.columns)
    words = tuple(column_words(model, c) for c in columns)
    shorter = replace(part, columns=columns, words=words)
    rooms = board_rooms(model)
    for room in rooms:
        whole = fit(model, [shorter], room, most_pitch_mm=most_pitch_mm)
        if whole is not None:
            return whole, []
    is_last_resort = most_pitch_mm > MOST_PITCH_MM
    cuts = list(range(1, len(columns))) if is_last_resort else _way_ends(shorter)
    found = [_longest(model, shorter, cuts, room, most_pitch_mm) for room in rooms]
    most, room = max(zip(found, rooms, strict=True), key=lambda one: one[0])
    if not most:
        return None
    sheets = math.ceil(len(columns) / most)
    even = [e for e in cuts if len(columns) / sheets <= e <= most]
    for end in (*even, most):
        made = _first_ways(model, shorter, end, room, most_pitch_mm)
        if made is not None:
            return made, [_later_ways(part, end)]
    return None


def _longest(
    model: Model, part: Part, cuts: Sequence[int], room: SheetRoom, most_pitch_mm: float
) -> int:
    """Return after how many columns a part is best cut for a room; 0 when none fits."""
    longest = misses = 0
    for end in cuts:
        if _first_ways(model, part, end, room, most_pitch_mm) is None:
            misses += 1
            if misses > MOST_MISSES:  # wider still: it will not fit again
                break
        else:
            longest, misses = end, 0
    return longest


def _first_ways(
    model: Model, part: Part, end: int, room: SheetRoom, most_pitch_mm: float
) -> SheetFit | None:
    """Return the sheet with the columns of a part up to ``end``, or None when they do not fit."""
    first = replace(part, columns=part.columns[:end], words=part.words[:end], count=part.number + 1)
    return fit(model, [first], room, most_pitch_mm=most_pitch_mm)


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
