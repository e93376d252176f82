"""How facts of the spec read on every sheet: given figures, states, surge protection."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.resolve.installation import Board, Installation, Known

NOT_RECORDED = "not recorded"


def known(given: Known | None, unit: str) -> str:
    """Return a given figure with its basis letter, or "not recorded"."""
    return NOT_RECORDED if given is None else f"{given.value:g} {unit} ({given.basis[0]})"


def state_word(state: State) -> str:
    """Return "existing" or "removed"; nothing for what the job brings."""
    return "" if state is State.NEW else str(state.value)


def state_before(state: State) -> str:
    """Return the state as it stands before a noun: ``existing ``, or nothing for new."""
    return f"{state_word(state)} ".lstrip()


def state_behind(state: State) -> str:
    """Return the state as it stands behind a name: `` (existing)``, or nothing for new."""
    word = state_word(state)
    return f" ({word})" if word else ""


def surge_protection_is_at(board: Board, installation: Installation) -> bool:
    """Tell whether the surge protection is at a board: the one its words name, else the first."""
    words = installation.supply.surge_protection.split() if installation.supply else []
    named = next((tag for tag in installation.boards if tag in words), "")
    return board.tag == named if named else board.fed_by == "supply"
