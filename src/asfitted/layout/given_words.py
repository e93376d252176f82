"""How facts of the spec read on every sheet: given figures, states, surge protection."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.network import fault_of_ipf
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.resolve.installation import Board, Installation, Known

NOT_RECORDED = "not recorded"


def known(given: Known | None, unit: str) -> str:
    """Return a given figure with its basis letter, or "not recorded"."""
    return NOT_RECORDED if given is None else f"{given.value:g} {unit} ({given.basis[0]})"


def known_fault(given: Known | None, phases: int) -> str:
    """Return a given fault current with which fault it is taken to be of, or "not recorded"."""
    words = known(given, "kA")
    return words if given is None else f"{words} {fault_of_ipf(phases)}"


def how_given(installation: Installation, subject: str, what: str) -> str:
    """Return "assumed" for a fact that the spec left out, else "as given"."""
    filled = {(default.subject, default.what) for default in installation.defaults}
    return "assumed" if (subject, what) in filled else "as given"


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
