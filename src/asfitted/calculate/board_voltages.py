"""Line voltages and vector currents at every board, after diversity.

The loads of each board stand at its busbars as constant currents with their own power factors, in
the sizes that the demand gives; feeders have their conductors at working temperature and a neutral
like the lines. This is what to expect at the terminals; limits of drop are judged by the tabulated
mV/A/m method, which is the safe side.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.unbalanced_flow import (
    NO_CURRENT,
    Branch,
    LineLoad,
    Lines,
    source_volts,
    sweep,
)
from asfitted.errors import InputOutOfRangeError

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.demand import Demands
    from asfitted.calculate.network import Voltages
    from asfitted.calculate.sized_cable import Sized
    from asfitted.resolve.installation import Board, Circuit, Installation

ORIGIN = "origin"


@dataclass(frozen=True)
class BoardVolts:
    """What to expect at the busbars of a board.

    ``volts`` are line to neutral, V, and ``amps`` the line currents, A: L1, L2, L3, or one figure
    on a single-phase board. ``neutral_a`` is the vector sum.
    """

    volts: tuple[float, ...]
    amps: tuple[float, ...]
    neutral_a: float


@dataclass(frozen=True)
class Tree:
    """Boards joined to the origin: the cables, and which line a single-phase board is on."""

    branches: tuple[Branch, ...]
    place: Mapping[str, int | None]  # None: all three


def feeder_branch(sized: Sequence[Sized], near: str, far: str) -> Branch | None:
    """Return the cables from board to board as one branch; None when they do not join."""
    into = {one.stretch.cable.to_end: one for one in sized}
    total, end = 0j, far
    for _ in sized:
        one = into.get(end)
        if one is None:
            return None
        total += one.facts.line_hot * one.stretch.length_m
        end = one.stretch.cable.from_end
        if end == near:
            return Branch(near, far, total, total)
    return None


def expected_volts(
    installation: Installation,
    demands: Demands,
    volts: Voltages,
    branches: Sequence[Branch],
) -> Mapping[str, BoardVolts]:
    """Return the expected voltages and currents of the boards that the origin reaches.

    Args:
        installation: The job.
        demands: Demand of every board.
        volts: Nominal voltages; the origin is held at them.
        branches: Cables from board to board, and from ``ORIGIN`` to boards at the supply.
    """
    tree = _tree(installation, branches)
    fed = {branch.far for branch in tree.branches}
    loads = [
        LineLoad(board, line, amount, "current")
        for board in fed
        for line, amount in enumerate(_at_board(installation, demands, board, fed, tree))
        if amount
    ]
    try:
        flow = sweep(ORIGIN, source_volts(volts.u0_v), tree.branches, loads)
    except InputOutOfRangeError:
        return {}
    found = {}
    for board in fed:
        places = _places(tree, board)
        found[board] = BoardVolts(
            tuple(abs(flow.volts[board][place]) for place in places),
            tuple(abs(flow.node_a[board][place]) for place in places),
            flow.neutral_a(board),
        )
    return found


def _tree(installation: Installation, branches: Sequence[Branch]) -> Tree:
    """Keep the branches that the origin reaches, outward."""
    leaving: dict[str, list[Branch]] = {}
    for branch in branches:
        leaving.setdefault(branch.near, []).append(branch)
    kept: list[Branch] = []
    place: dict[str, int | None] = {ORIGIN: None}
    waiting = [ORIGIN]
    while waiting:
        for branch in leaving.get(waiting.pop(0), ()):
            if branch.far not in place:
                board = installation.boards[branch.far]
                place[branch.far] = _place(installation, board, place[branch.near])
                kept.append(branch)
                waiting.append(branch.far)
    return Tree(tuple(kept), place)


def _place(installation: Installation, board: Board, near: int | None) -> int | None:
    """Return the line of the origin that a single-phase board is on, None for all three."""
    if board.phases == 3:
        return None
    feeder = installation.circuits.get(board.fed_by)
    if near is not None or feeder is None:
        return near or 0
    return int(feeder.phase[1]) - 1 if feeder.phase in ("L1", "L2", "L3") else 0


def _places(tree: Tree, board: str) -> tuple[int, ...]:
    place = tree.place[board]
    return (0, 1, 2) if place is None else (place,)


def _at_board(
    installation: Installation, demands: Demands, board: str, fed: set[str], tree: Tree
) -> Lines:
    """Return the currents that a board's own circuits take, on the lines of the origin."""
    own = demands.boards[board].own_a
    feeders = [
        circuit
        for circuit in installation.circuits.values()
        if circuit.board == board and circuit.feeds_board and circuit.feeds_board not in fed
    ]
    for circuit in feeders:
        own = _with_feeder(own, circuit, demands)
    place = tree.place[board]
    if place is None:
        return own
    moved = list(NO_CURRENT)
    moved[place] = own[0]
    return (moved[0], moved[1], moved[2])


def _with_feeder(own: Lines, circuit: Circuit, demands: Demands) -> Lines:
    """Add a feeder whose cable is not known: its load stands at this board."""
    a, b, c = demands.lines[circuit.tag]
    return (own[0] + a, own[1] + b, own[2] + c)
