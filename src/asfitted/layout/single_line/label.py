"""The corner label of an enclosure and where its main switch stands."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.lettering import BODY
from asfitted.layout.single_line import words as say
from asfitted.layout.single_line.phrases import set_phrases

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

SWITCH_X = 96.0  # left edge of an enclosure to its incoming line, where there is room
SWITCH_ROOM = 42.0  # main switch with its words, to the right edge of the enclosure
LEAST_BOX_MM = 96.0  # corner label and main switch
DIRECT_BOX_MM = SWITCH_X + SWITCH_ROOM  # under the intake, which needs its room on the left
CUT_BOX_MM = 70.0  # a later part of a board that is cut has no main switch
LABEL_PAD = 2.0


def switch_x_mm(box_mm: float) -> float:
    """Return the distance of the incoming line from the left edge of an enclosure, mm."""
    return min(SWITCH_X, box_mm - SWITCH_ROOM)


def label_width_mm(box_mm: float, number: int) -> float:
    """Return the room for the lines of a corner label, mm; ``number`` is that of the part."""
    if number > 1:
        return box_mm - 2 * LABEL_PAD
    return switch_x_mm(box_mm) - 6.0 - LABEL_PAD


def label_lines(model: Model, tag: str, room_mm: float) -> list[str]:
    """Return the lines of a corner label under the tag of its board."""
    board = model.installation.boards[tag]
    groups = say.board_phrases(model, board)
    return [line for group in groups for line in set_phrases(group, room_mm, BODY)]
