"""What is live, where it is isolated and what stays live even then: first in the brief."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.schedule.words import device_words, place
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.brief.wall_sketch import WallWork
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Board, Circuit

ASBESTOS = "asbestos register seen before any hole"
BESIDE_MM = 300.0  # as near beside a board counts as at it: a hand's reach (common practice)


def live_boards(model: Model) -> tuple[Board, ...]:
    """Return the boards that are there already, even to be taken out: live until isolated."""
    boards = model.installation.boards.values()
    return tuple(board for board in boards if board.state is not State.NEW)


def live_words(tags: Sequence[str]) -> str:
    """Return ``DB1 IS LIVE`` or ``DB1, DB2 ARE LIVE``."""
    return f"{', '.join(tags)} {'IS' if len(tags) == 1 else 'ARE'} LIVE"


def caution_words(model: Model) -> str:
    """Return the cautions for the top of each page."""
    live = [board.tag for board in live_boards(model)]
    its = "its supply side stays" if len(live) == 1 else "their supply sides stay"
    boards = f"{live_words(live)} until isolated, locked off and proved dead; {its} live. "
    first = f"{boards}Prove dead" if live else "Isolate, lock off and prove dead"
    return f"{first} before opening anything. Scan before you drill. Not sure: stop, ask."


def isolation_words(board: Board) -> str:
    """Return where a board is made dead: its main switch and where that stands."""
    switch = board.main_switch
    what = f"main switch ({device_words(switch)})" if switch else "main switch, not recorded which,"
    where = place(board.position)
    return f"{what} of {board.tag}, {where}"


def supply_side_words(board: Board) -> str:
    """Return what stays live when the main switch of a board is off, and who makes it dead."""
    if board.fed_by == "supply":
        return "the supply side of the main switch stays live: only the distributor makes it dead"
    return f"the supply side of the main switch stays live until {board.fed_by} is locked off too"


def ways_in_use(board: Board, model: Model) -> list[str]:
    """Return the ways of a board that serve somebody today: they go off with it."""
    return [circuit.way for circuit in _existing(model) if circuit.board == board.tag]


def _existing(model: Model) -> list[Circuit]:
    circuits = model.installation.circuits.values()
    return [circuit for circuit in circuits if circuit.state is State.EXISTING]


def near_board(board: Board, works: Sequence[WallWork]) -> list[str]:
    """Return the new runs and things that are fixed at a board, over it or under it."""
    at = board.position
    reach = board.width_mm / 2 + BESIDE_MM
    low, high = at.along_mm - reach, at.along_mm + reach
    found: list[str] = []
    for work in works:
        content = work.content
        if content.wall.name != at.wall:
            continue
        found += [
            piece.run.tag
            for piece in content.pieces
            if min(piece.start.along, piece.end.along) <= high
            and max(piece.start.along, piece.end.along) >= low
        ]
        found += [
            thing.tag
            for thing in content.things
            if thing.tag != board.tag
            and thing.state is State.NEW
            and low <= thing.at.along <= high
            and thing.is_outside == at.outside
        ]
    return list(dict.fromkeys(found))


def isolation_steps(model: Model, works: Sequence[WallWork]) -> list[str]:
    """Return the steps by which the boards that are there are made dead, before work near them."""
    steps = []
    for board in live_boards(model):
        near = near_board(board, works)
        here = f" (here {', '.join(near)})" if near else ""
        ways = ways_in_use(board, model)
        agreed = f" Agree the time: {', '.join(ways)} go off with it." if ways else ""
        side = supply_side_words(board)
        steps.append(
            f"Before any work at or above {board.tag}{here}: isolate at the "
            f"{isolation_words(board)}; lock off, prove dead. {side[0].upper()}{side[1:]}.{agreed} "
            "By a competent person."
        )
    return steps


def live_and_by_others(model: Model) -> tuple[str, ...]:
    """Return what is live, existing or by others, one sentence each; isolation first."""
    job = model.installation
    found = []
    for board in live_boards(model):
        ways = ways_in_use(board, model)
        kept = f" Ways {', '.join(ways)} stay in use." if ways else ""
        found.append(
            f"{live_words([board.tag])} until isolated, locked off and proved dead: at the "
            f"{isolation_words(board)}. Even then {supply_side_words(board)}.{kept}"
        )
    found += [
        f"{board.tag} is new. Once supplied it is isolated at the {isolation_words(board)}; even "
        f"then {supply_side_words(board)}."
        for board in job.boards.values()
        if board.state is State.NEW and board.fed_by == "supply"
    ]
    if job.supply is not None:
        found.append("Supply, meter and cut-out belong to others: do not open or cut a seal.")
    old = [c.tag for c in job.cables.values() if c.state is State.EXISTING]
    if old:
        found.append(f"Existing cables: {', '.join(old)}. Where their way is not drawn, scan.")
    unknown = [circuit.tag for circuit in _existing(model) if not circuit.cables]
    if unknown:
        found.append(f"Cables of {', '.join(unknown)} were not surveyed: they may be anywhere.")
    return tuple(found) or ("Nothing existing is recorded: that is no proof; scan and prove dead.",)
