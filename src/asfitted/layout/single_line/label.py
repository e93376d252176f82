"""The corner label of an enclosure and where its main switch stands."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.given_words import state_word
from asfitted.layout.lettering import BODY, TAG, wrap
from asfitted.layout.single_line import words as say
from asfitted.layout.single_line.phrases import set_phrases
from asfitted.layout.single_line.room import PITCH, TAG_PITCH

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.parts import Part

SWITCH_X = 106.0  # left edge of an enclosure to its incoming line, where there is room
SWITCH_ROOM = 42.0  # main switch with its words, to the right edge of the enclosure
LEAST_BOX_MM = 96.0  # corner label and main switch
DIRECT_BOX_MM = SWITCH_X + SWITCH_ROOM  # under the intake, which needs its room on the left
CUT_BOX_MM = 70.0  # a later part of a board that is cut has no main switch
LABEL_PAD = 2.0
EARTH_LANE_MM = 13.0  # left of the incoming line under the intake: its protective conductor


def switch_x_mm(box_mm: float) -> float:
    """Return the distance of the incoming line from the left edge of an enclosure, mm."""
    return min(SWITCH_X, box_mm - SWITCH_ROOM)


def label_width_mm(box_mm: float, number: int, *, is_direct: bool = False) -> float:
    """Return the room for the lines of a corner label, mm; ``number`` is that of the part."""
    if number > 1:
        return box_mm - 2 * LABEL_PAD
    lane = EARTH_LANE_MM if is_direct else 0.0
    return switch_x_mm(box_mm) - 6.0 - LABEL_PAD - lane


def heading_lines(model: Model, part: Part, room_mm: float) -> list[str]:
    """Return the heading of a corner label: tag, name, state, and which ways of a cut board."""
    board = model.installation.boards[part.tag]
    heading = [part.tag, board.name if board.name != board.tag else "", state_word(board.state)]
    if part.count > 1:
        first, last = part.columns[0].ways[0].number, part.columns[-1].ways[-1].number
        ways = f"ways {first} to {last}" if last > first else f"way {first}"
        heading.append(f"{ways} of {board.way_count}")
    words = " · ".join(word for word in heading if word)
    return wrap(words, room_mm, TAG, bold=True)


def label_lines(model: Model, tag: str, room_mm: float) -> list[str]:
    """Return the lines of a corner label under its heading."""
    board = model.installation.boards[tag]
    groups = say.board_phrases(model, board)
    return [line for group in groups for line in set_phrases(group, room_mm, BODY)]


def label_height_mm(model: Model, part: Part, box_mm: float, *, is_direct: bool) -> float:
    """Return the height of a corner label in mm, for an enclosure of a width."""
    room = label_width_mm(box_mm, part.number, is_direct=is_direct)
    heading = len(heading_lines(model, part, room)) * TAG_PITCH
    return LABEL_PAD + heading + len(label_lines(model, part.tag, room)) * PITCH
