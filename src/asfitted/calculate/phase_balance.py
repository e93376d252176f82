"""Which line each single-phase circuit of a three-phase board goes on."""

from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING

from asfitted.calculate.ranges import require_not_negative
from asfitted.errors import InputOutOfRangeError

if TYPE_CHECKING:
    from collections.abc import Mapping

LINES = ("L1", "L2", "L3")
_TRY_ALL_UP_TO = 8


def line_totals_a(loads_a: Mapping[str, float], *, lines: Mapping[str, str]) -> dict[str, float]:
    """Return the sum of the loads on each line, A.

    Args:
        loads_a: Load of each circuit, A, 0 or more.
        lines: Line "L1", "L2" or "L3" of each circuit.

    Returns:
        Load of each line, A.

    Raises:
        InputOutOfRangeError: a load is below 0 A, or a circuit is on no line.

    Source:
        Arithmetic; totals by line are common practice on a schedule.

    Example:
        >>> line_totals_a({"1": 10, "2": 6}, lines={"1": "L1", "2": "L3"})
        {'L1': 10.0, 'L2': 0.0, 'L3': 6.0}
    """
    totals = dict.fromkeys(LINES, 0.0)
    for circuit, load_a in loads_a.items():
        require_not_negative(load_a=load_a)
        line = lines.get(circuit, "")
        if line not in totals:
            raise InputOutOfRangeError(f"circuit {circuit!r} is on {line!r}, not {LINES}")
        totals[line] += load_a
    return totals


def unbalance_percent(totals_a: Mapping[str, float]) -> float:
    """Return how far the worst line lies from the mean, %.

    100 max|I - mean| / mean

    Args:
        totals_a: Load of each line, A, 0 or more.

    Returns:
        Unbalance, %; 0 where nothing is connected.

    Raises:
        InputOutOfRangeError: a load is below 0 A.

    Source:
        Common practice: within 10 to 20 % of the mean.

    Example:
        >>> unbalance_percent({"L1": 12, "L2": 10, "L3": 8})
        20.0
    """
    for total_a in totals_a.values():
        require_not_negative(total_a=total_a)
    mean_a = sum(totals_a.values()) / len(totals_a)
    if mean_a == 0:
        return 0.0
    return 100.0 * max(abs(total - mean_a) for total in totals_a.values()) / mean_a


def propose_lines(
    loads_a: Mapping[str, float], *, fixed: Mapping[str, str] | None = None
) -> dict[str, str]:
    """Return a line for each single-phase circuit that balances the board.

    All arrangements are tried for up to eight free circuits; beyond, the largest goes to the
    least loaded line first, then moves and swaps are made while they narrow the spread between
    lines. The answer depends on the loads and the names only, not on their order.

    Args:
        loads_a: Load of each circuit, A, 0 or more.
        fixed: Circuits that stay on their line "L1", "L2" or "L3".

    Returns:
        Line of each circuit, the fixed ones included, sorted by name.

    Raises:
        InputOutOfRangeError: a load is below 0 A, or a fixed circuit is unknown or on no line.

    Source:
        Common practice: spread single-phase loads evenly over the lines.

    Example:
        >>> propose_lines({"1": 10, "2": 6, "3": 6, "4": 4}, fixed={"1": "L2"})
        {'1': 'L2', '2': 'L1', '3': 'L3', '4': 'L1'}
    """
    kept = dict(fixed or {})
    for circuit, line in kept.items():
        if circuit not in loads_a or line not in LINES:
            raise InputOutOfRangeError(f"circuit {circuit!r} cannot be fixed to {line!r}")
    held = {circuit: loads_a[circuit] for circuit in kept}
    start = line_totals_a(held, lines=kept)
    for load_a in loads_a.values():
        require_not_negative(load_a=load_a)
    free = sorted((c for c in loads_a if c not in kept), key=lambda c: (-loads_a[c], c))
    amounts = [float(loads_a[circuit]) for circuit in free]
    base = [start[line] for line in LINES]
    if len(free) <= _TRY_ALL_UP_TO:
        chosen = min(
            product(range(3), repeat=len(free)), key=lambda way: (_spread(base, amounts, way), way)
        )
    else:
        chosen = _narrowed(base, amounts, _largest_first(base, amounts))
    found = kept | {circuit: LINES[line] for circuit, line in zip(free, chosen, strict=True)}
    return dict(sorted(found.items()))


def _totals(base: list[float], amounts: list[float], way: tuple[int, ...]) -> list[float]:
    totals = list(base)
    for amount, line in zip(amounts, way, strict=True):
        totals[line] += amount
    return totals


def _spread(base: list[float], amounts: list[float], way: tuple[int, ...]) -> float:
    totals = _totals(base, amounts, way)
    return round(max(totals) - min(totals), 9)


def _largest_first(base: list[float], amounts: list[float]) -> tuple[int, ...]:
    totals = list(base)
    way = []
    for amount in amounts:
        line = min(range(3), key=lambda index: (totals[index], index))
        totals[line] += amount
        way.append(line)
    return tuple(way)


def _neighbours(way: tuple[int, ...]) -> list[tuple[int, ...]]:
    moves = [(*way[:i], line, *way[i + 1 :]) for i in range(len(way)) for line in range(3)]
    swaps = []
    for i in range(len(way)):
        for j in range(i + 1, len(way)):
            changed = list(way)
            changed[i], changed[j] = way[j], way[i]
            swaps.append(tuple(changed))
    return moves + swaps


def _narrowed(base: list[float], amounts: list[float], way: tuple[int, ...]) -> tuple[int, ...]:
    while True:
        best = min(_neighbours(way), key=lambda other: (_spread(base, amounts, other), other))
        if _spread(base, amounts, best) >= _spread(base, amounts, way):
            return way
        way = best
