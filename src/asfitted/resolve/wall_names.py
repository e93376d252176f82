"""Which wall is meant: by its letter where only one room has it, else by room and letter."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.resolve.ledger import Ledger
    from asfitted.spec.load_yaml import SpecPath


class WallNames:
    """The walls of a job by room and letter, and the name that each has on paper.

    Letters that are all different serve as names. As soon as two rooms have a wall of one letter,
    every wall of the job is named by room and letter ("Hall A"), so that none can be mistaken.
    """

    def __init__(self, walls: Iterable[tuple[str, str]]) -> None:
        """Take room and letter of every wall, in the order of the spec."""
        self.walls = tuple(dict.fromkeys(walls))
        letters = [letter for _, letter in self.walls]
        self.are_plain = len(letters) == len(set(letters))

    @property
    def rooms(self) -> tuple[str, ...]:
        """Rooms in the order of the spec."""
        return tuple(dict.fromkeys(room for room, _ in self.walls))

    def name(self, room: str, letter: str) -> str:
        """Return the name on paper of a wall."""
        return letter if self.are_plain else f"{room} {letter}"

    def find(
        self, room: str, letter: str, path: SpecPath, ledger: Ledger, *, near: str = ""
    ) -> tuple[str, str] | None:
        """Return room and letter of the wall that is meant; a wrong or unclear one is noted.

        Args:
            room: The room as written, "" for none.
            letter: The letter as written.
            path: Where it stands in the spec.
            ledger: Takes the problem.
            near: The room that is meant when none is written and it has such a wall.
        """
        if room:
            return self._in_room(room, letter, path, ledger)
        if near and (own := self._with_letter(letter, (near,))):
            return own[0]
        found = self._with_letter(letter, self.rooms)
        if not found:
            known = [self.name(*wall) for wall in self.walls]
            ledger.unknown(Code.NAME, "wall", letter, known, path)
        if len(found) > 1:
            rooms = ", ".join(one for one, _ in found)
            written = " or ".join(f'"{one} wall {letter}"' for one, letter in found[:3])
            message = f'wall "{letter}" is not clear: {len(found)} rooms have one ({rooms})'
            ledger.problem(Code.NAME, message, path, f"write {written}")
        return found[0] if len(found) == 1 else None

    def _with_letter(self, letter: str, rooms: Iterable[str]) -> list[tuple[str, str]]:
        for written in (letter, letter.upper()):
            found = [(room, written) for room in rooms if (room, written) in self.walls]
            if found:
                return found
        return []

    def _in_room(
        self, room: str, letter: str, path: SpecPath, ledger: Ledger
    ) -> tuple[str, str] | None:
        named = next((one for one in self.rooms if one.lower() == room.lower()), "")
        if not named:
            ledger.unknown(Code.NAME, "room", room, self.rooms, path)
            return None
        found = self._with_letter(letter, (named,))
        if not found:
            known = [own for one, own in self.walls if one == named]
            ledger.unknown(Code.NAME, f"wall of {named}", letter, known, path)
        return found[0] if found else None
