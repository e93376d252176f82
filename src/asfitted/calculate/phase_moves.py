"""A better spread of the single-phase ways of a three-phase board, in few moves.

Existing circuits stay where they are. A circuit moves to a blank pole of the other line, or two
circuits change places. The move that narrows the lines most is made first; moves stop where the
next one gains too little. Loads are weighed as the demand weighs them: each kind of load by its
own diversity on the board.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING

from asfitted.calculate.demand import diversity_kind, with_diversity
from asfitted.calculate.phase_balance import LINES, unbalance_percent

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.demand import BoardDemand, Demands, Lines
    from asfitted.resolve.installation import Board, Circuit, Installation

MATERIAL_PCT = 5.0  # percentage points of imbalance that a proposal must gain
ENOUGH_PCT = 5.0  # a board within this is left as it is
LEAST_GAIN_A = 0.5  # a further move must narrow the lines by this
MOST_MOVES = 6

Move = tuple[str, str, str]
Change = tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Proposal:
    """Moves of circuits from line to line, and the imbalance of the demand with them made, %."""

    moves: tuple[Move, ...]
    imbalance_pct: float


def propose_moves(
    installation: Installation, board: Board, circuits: Sequence[Circuit], demands: Demands
) -> Proposal | None:
    """Return moves that narrow the lines of a board materially, None where there are none.

    Args:
        installation: The job.
        board: A board; one on a single phase gives None.
        circuits: Its circuits.
        demands: Demand of every circuit and board.
    """
    demand = demands.boards[board.tag]
    before = _imbalance(demand.demand_a)
    if board.phases != 3 or before <= ENOUGH_PCT:
        return None
    free = [c for c in circuits if c.phase in LINES and c.state == "new"]
    weight = _weights(installation, circuits, demands)
    start = {c.tag: str(c.phase) for c in free}
    lines = _narrowed(start, weight, demand, _blank_poles(board))
    moves = tuple((tag, start[tag], lines[tag]) for tag in start if lines[tag] != start[tag])
    if not moves:
        return None
    after = _imbalance(_demand_with(installation, circuits, demands, lines))
    return Proposal(moves, after) if before - after >= MATERIAL_PCT else None


def _imbalance(lines: Lines) -> float:
    return unbalance_percent({f"L{i}": amps for i, amps in enumerate(lines, 1)})


def _weights(
    installation: Installation, circuits: Sequence[Circuit], demands: Demands
) -> dict[str, float]:
    """Return what each single-phase circuit adds to its line after diversity, A."""
    connected: dict[str, float] = {}
    after: dict[str, float] = {}
    groups = _by_kind(installation, circuits, demands, {})
    for kind, rows in groups.items():
        connected[kind] = sum(sum(row) for row in rows)
        after[kind] = sum(with_diversity(kind, rows))
    found = {}
    for circuit in circuits:
        kind = diversity_kind(circuit, installation)
        share = after[kind] / connected[kind] if connected[kind] else 0.0
        found[circuit.tag] = sum(demands.lines[circuit.tag]) * share
    return found


def _by_kind(
    installation: Installation,
    circuits: Sequence[Circuit],
    demands: Demands,
    lines: Mapping[str, str],
) -> dict[str, list[Lines]]:
    groups: dict[str, list[Lines]] = {}
    for circuit in circuits:
        row = demands.lines[circuit.tag]
        if circuit.tag in lines:
            amps = sum(row)
            l1, l2, l3 = (amps if lines[circuit.tag] == line else 0.0 for line in LINES)
            row = (l1, l2, l3)
        groups.setdefault(diversity_kind(circuit, installation), []).append(row)
    return groups


def _demand_with(
    installation: Installation,
    circuits: Sequence[Circuit],
    demands: Demands,
    lines: Mapping[str, str],
) -> Lines:
    """Return the demand of the board with circuits on other lines, A."""
    groups = _by_kind(installation, circuits, demands, lines)
    shares = [with_diversity(kind, rows) for kind, rows in groups.items()]
    l1, l2, l3 = (sum(share[place] for share in shares) for place in range(3))
    return (l1, l2, l3)


def _blank_poles(board: Board) -> dict[str, int]:
    """Return how many poles of each line nothing is on."""
    blank = dict.fromkeys(LINES, 0)
    for way in board.ways:
        if not way.circuit and way.words == "blank":
            for line in LINES if way.phase == "TP" else (way.phase,):
                if line in blank:
                    blank[line] += 1
    return blank


def _narrowed(
    start: Mapping[str, str],
    weight: Mapping[str, float],
    demand: BoardDemand,
    blank: Mapping[str, int],
) -> dict[str, str]:
    lines, poles = dict(start), dict(blank)
    totals = dict(zip(LINES, demand.demand_a, strict=True))
    for _ in range(MOST_MOVES):
        best: Change | None = None
        least = _spread(totals) - LEAST_GAIN_A
        for change in _changes(lines, poles):
            spread = _spread(_after(totals, change, lines, weight))
            if spread < least - 1e-9:
                best, least = change, spread
        if best is None:
            break
        totals = _after(totals, best, lines, weight)
        for tag, line in best:
            if len(best) == 1:
                poles[line] -= 1
                poles[lines[tag]] += 1
            lines[tag] = line
    return lines


def _changes(lines: Mapping[str, str], poles: Mapping[str, int]) -> list[Change]:
    """Return every move to a blank pole and every change of places, in order of the circuits."""
    moves: list[Change] = [
        ((tag, line),)
        for tag, now in lines.items()
        for line in LINES
        if line != now and poles[line] > 0
    ]
    swaps: list[Change] = [
        ((one, lines[other]), (other, lines[one]))
        for one, other in combinations(lines, 2)
        if lines[one] != lines[other]
    ]
    return moves + swaps


def _after(
    totals: Mapping[str, float],
    change: Change,
    lines: Mapping[str, str],
    weight: Mapping[str, float],
) -> dict[str, float]:
    found = dict(totals)
    for tag, line in change:
        found[lines[tag]] -= weight[tag]
        found[line] += weight[tag]
    return found


def _spread(totals: Mapping[str, float]) -> float:
    return max(totals.values()) - min(totals.values())
