"""The storeys of a building: which room is on which, and how high its floor lies."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from asfitted.resolve.ledger import Ledger
    from asfitted.spec.rooms import RoomWords

GROUND = "Ground floor"


@dataclass(frozen=True)
class Storey:
    """Storey and floor level of one room: the name, and mm above the ground floor."""

    name: str
    level_mm: float


def storeys_of(ledger: Ledger) -> dict[str, Storey]:
    """Return the storey of every room; one whose level cannot be told is noted.

    A room without a level has that of the first room of its storey; the storey of the job's first
    room is at nought when it gives none. The name is "" throughout when no room names a storey and
    all are on one level.
    """
    rooms = ledger.loaded.spec.rooms
    levels = {name: _level_mm(name, words, ledger) for name, words in rooms.items()}
    is_plain = len(set(levels.values())) <= 1 and not any(w.storey for w in rooms.values())
    return {
        name: Storey("" if is_plain else _storey_name(words, levels[name]), levels[name])
        for name, words in rooms.items()
    }


def _storey_name(words: RoomWords, level_mm: float) -> str:
    if words.storey:
        return words.storey
    return GROUND if level_mm == 0 else f"Level {level_mm / 1000:+g} m"


def _level_mm(name: str, words: RoomWords, ledger: Ledger) -> float:
    if words.level is not None:
        return words.level
    rooms = ledger.loaded.spec.rooms
    if not words.storey:
        return 0.0
    first = next(room for room in rooms.values() if room.storey == words.storey)
    if first.level is not None:
        return first.level
    if words.storey != next(iter(rooms.values())).storey:
        message = f"storey {words.storey} of {name} does not say how high its floor is"
        hint = "add level: 3.2 m, from the ground floor's finished floor to this one's"
        ledger.problem(Code.MISSING, message, ("rooms", name, "storey"), hint)
    return 0.0
