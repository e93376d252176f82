"""Words for people who do not draw: where things are, what they are called, what is missing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.figures import rounded
from asfitted.layout.given_words import NOT_RECORDED

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from asfitted.resolve.installation import Board, Circuit, Installation, Job, Known, Position

FULL_BASIS = {"m": "measured", "d": "declared", "a": "assumed", "c": "calculated"}


def recorded(words: str) -> bool:
    """Tell whether a fact was given."""
    return words.strip().lower() not in {"", NOT_RECORDED}


def or_not_recorded(words: str) -> str:
    """Return a fact, or the words that it is missing."""
    return words if recorded(words) else NOT_RECORDED


def site_print_words(job: Job) -> str:
    """Return what a print with mark-ups from site is, and which print holds for what."""
    issue = job.revision.removesuffix("-S")
    return (
        f"For information: {issue} marked up on site. What was found otherwise holds as on this "
        f"print, all else as issued in {issue}."
    )


def wall_words(position: Position, installation: Installation) -> str:
    """Return the wall and room of a place: ``wall D of the making floor``."""
    wall = installation.walls.get(position.wall)
    if wall is None:
        return position.words
    letter = getattr(wall, "letter", "") or wall.name
    room = wall.room
    side = "outside, behind " if position.outside else ""
    return f"{side}wall {letter} of the {room[0].lower()}{room[1:]}"


def place_words(position: Position, installation: Installation) -> str:
    """Return where a thing is, as one tells a visitor."""
    if not position.wall:
        return position.words
    along, up = _as_told_m(position.along_mm), _as_told_m(position.up_mm)
    out = f", {_as_told_m(position.out_mm)} out from the wall" if position.out_mm else ""
    where = wall_words(position, installation)
    return f"{where}, {along} from its left end, {up} above the floor{out}"


def _as_told_m(length_mm: float) -> str:
    """Return a length as exact as on drawings, without the noughts that nobody says: ``5.4 m``."""
    return f"{float(rounded(length_mm / 1000, 2)):g} m"


def short_place(position: Position, installation: Installation) -> str:
    """Return a place for a table: wall and height."""
    if not position.wall:
        return position.words
    side = " outside" if position.outside else ""
    more = len(installation.rooms) > 1 and position.wall in installation.walls
    room = f"{installation.walls[position.wall].room}, " if more else ""
    wall = installation.walls.get(position.wall)
    letter = getattr(wall, "letter", "") or position.wall
    return f"{room}wall {letter}{side}, +{position.up_mm:.0f}"


def head_boards(installation: Installation) -> list[Board]:
    """Return the boards that the supply feeds directly."""
    return [b for b in installation.boards.values() if b.fed_by == "supply"]


def board_name(board: Board) -> str:
    """Return a board as called: its tag, with its name where that says more."""
    return board.tag if board.name in {"", board.tag} else f"{board.tag}, {board.name}"


def circuits_in_state(installation: Installation, state: str) -> list[Circuit]:
    """Return the circuits that are new, existing or removed."""
    return [c for c in installation.circuits.values() if c.state == state]


def known_words(given: Known | None, unit: str) -> tuple[str, str]:
    """Return a given figure and how it is known; "not recorded" where there is none."""
    if given is None:
        return NOT_RECORDED, "–"
    return f"{given.value:g} {unit}", str(given.basis.value)


def some_of(names: Sequence[str], most: int) -> str:
    """Return so many names in a row, and how many there are besides."""
    shown = ", ".join(names[:most])
    left = len(names) - most
    return f"{shown} and {left} more" if left > 0 else shown


def counted(count: int, one: str, many: str = "") -> str:
    """Return a count with its noun: ``1 board``, ``3 boards``."""
    return f"{count} {one if count == 1 else many or one + 's'}"


def sentence(words: str) -> str:
    """Return words that end with a full stop and begin with a capital."""
    text = words.strip()
    if not text:
        return text
    return text[0].upper() + text[1:] + ("" if text.endswith((".", "?", "!")) else ".")


def joined(words: Iterable[str], last: str = "and") -> str:
    """Return names in a sentence: ``A, B and C``."""
    names = list(words)
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} {last} {names[-1]}"
