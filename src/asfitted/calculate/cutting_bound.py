"""Lower bound of one-dimensional cutting: the linear programme over patterns, in exact fractions.

Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations
Research 9 (1961). The dual is solved with the patterns found so far; the pattern that breaks it
most is added until none does.
"""

from __future__ import annotations

import math
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

Pattern = tuple[int, ...]
MOST_UNITS = 50_000


def cutting_patterns(stock: int, lengths: Sequence[int]) -> tuple[Pattern, ...]:
    """Return every way to cut one stock piece: how many of each length, none all nought.

    Args:
        stock: Length of the stock piece, in whole units, above 0.
        lengths: Lengths to cut, in the same unit, above 0.

    Example:
        >>> len(cutting_patterns(100, [14, 31, 36, 45]))
        37
    """

    def cut(place: int, left: int) -> Iterator[Pattern]:
        if place == len(lengths):
            yield ()
            return
        for count in range(left // lengths[place], -1, -1):
            for rest in cut(place + 1, left - count * lengths[place]):
                yield (count, *rest)

    return tuple(pattern for pattern in cut(0, stock) if any(pattern))


def full_patterns(
    stock: int, lengths: Sequence[int], wanted: Sequence[int], first: int = -1
) -> Iterator[Pattern]:
    """Yield the ways to cut a stock piece that leave no room for another wanted length.

    Args:
        stock: Length of the stock piece, in whole units.
        lengths: Different lengths, longest first.
        wanted: How many of each are still wanted.
        first: Place of a length of which at least one must be in it; -1 for none.

    Example:
        >>> list(full_patterns(10, (6, 4, 3), (1, 1, 1)))
        [(1, 1, 0), (1, 0, 1), (0, 1, 1)]
    """
    rest = [
        sum(p * n for p, n in zip(lengths[i:], wanted[i:], strict=True))
        for i in range(len(lengths) + 1)
    ]

    def fill(place: int, room: int, least_left_out: int) -> Iterator[Pattern]:
        # lengths are in falling order: the last one left out is the shortest of them so far
        if room - rest[place] >= least_left_out:
            return  # whatever follows, one more of a length left out would fit
        if place == len(lengths):
            yield ()
            return
        most = min(wanted[place], room // lengths[place])
        for count in range(most, (1 if place == first else 0) - 1, -1):
            left_out = lengths[place] if count < wanted[place] else least_left_out
            for others in fill(place + 1, room - count * lengths[place], left_out):
                yield (count, *others)

    yield from fill(0, stock, stock + 1)


def least_sum(material: int, stock: Sequence[int]) -> int:
    """Return the least sum of whole stock lengths, each any number of times, not below a figure.

    Args:
        material: Length that has to come out of the stock, in whole units.
        stock: Stock lengths in the same unit.

    Example:
        >>> least_sum(146, (100, 305))
        200
    """
    unit = math.gcd(*stock)
    sizes = sorted(length // unit for length in stock)
    wanted = -(-material // unit)
    if wanted > MOST_UNITS:
        return wanted * unit
    reached = {0}
    edge = [0]
    while edge:
        edge = sorted({r + s for r in edge if r < wanted for s in sizes} - reached)
        reached.update(edge)
    return min(r for r in reached if r >= wanted) * unit


def counting_bound(stock: int, demand: Mapping[int, int]) -> int:
    """Return a lower bound of the number of stock pieces by counting alone: quick at any size.

    Args:
        stock: Length of the stock piece, in whole units; holds every length.
        demand: How many of each length, above 0.

    Source:
        Martello and Toth, "Knapsack Problems" (1990), section 8.3.1, bound L2.

    Example:
        >>> counting_bound(10, {6: 3, 4: 1, 3: 1})
        3
    """
    best = -(-sum(length * n for length, n in demand.items()) // stock)
    for least in (*(length for length in demand if 2 * length <= stock), 0):
        alone = sum(n for length, n in demand.items() if length > stock - least)
        halves = {p: n for p, n in demand.items() if stock - least >= p and 2 * p > stock}
        small = sum(p * n for p, n in demand.items() if 2 * p <= stock and p >= least)
        count = sum(halves.values())
        room = count * stock - sum(p * n for p, n in halves.items())
        best = max(best, alone + count + max(0, -(-(small - room) // stock)))
    return best


def lower_bound(
    stock: int, lengths: Sequence[int], demand: Sequence[int]
) -> tuple[Fraction, dict[Pattern, Fraction]]:
    """Return the least number of stock pieces if pieces could be parts, and the patterns used.

    Args:
        stock: Length of the stock piece, in whole units, above 0; holds every length.
        lengths: Different lengths to cut, above 0.
        demand: How many of each, above 0.

    Example:
        >>> float(lower_bound(100, [14, 31, 36, 45], [211, 395, 610, 97])[0])
        452.25
    """
    patterns = [
        tuple(stock // length if i == place else 0 for i in range(len(lengths)))
        for place, length in enumerate(lengths)
    ]
    while True:
        prices, times = _solve_dual(patterns, demand)
        worth, best = _most_worth(stock, tuple(lengths), tuple(prices))
        if worth <= 1:
            used = {p: t for p, t in zip(patterns, times, strict=True) if t}
            return sum(used.values(), Fraction(0)), used
        patterns.append(best)


def _most_worth(
    stock: int, lengths: tuple[int, ...], prices: tuple[Fraction, ...]
) -> tuple[Fraction, Pattern]:
    """Return the pattern worth most at the prices: a knapsack, each length any number of times."""

    @cache
    def best(place: int, left: int) -> tuple[Fraction, Pattern]:
        if place == len(lengths):
            return Fraction(0), ()
        found: tuple[Fraction, Pattern] = (Fraction(-1), ())
        for count in range(left // lengths[place], -1, -1):
            worth, rest = best(place + 1, left - count * lengths[place])
            total = count * prices[place] + worth
            if total > found[0]:
                found = (total, (count, *rest))
        return found

    return best(0, stock)


def _solve_dual(
    patterns: Sequence[Pattern], demand: Sequence[int]
) -> tuple[list[Fraction], list[Fraction]]:
    """Return prices that make the demand worth most, no pattern worth over 1, and pattern counts.

    Simplex method from the origin with Bland's rule, so that it ends.
    """
    rows, columns = len(patterns), len(demand)
    tableau = [
        [*map(Fraction, pattern), *(Fraction(int(i == j)) for j in range(rows)), Fraction(1)]
        for i, pattern in enumerate(patterns)
    ]
    goal = [*(Fraction(-d) for d in demand), *([Fraction(0)] * (rows + 1))]
    basis = [columns + i for i in range(rows)]
    while True:
        entering = next((j for j, value in enumerate(goal[:-1]) if value < 0), None)
        if entering is None:
            break
        leaving = min(
            (i for i in range(rows) if tableau[i][entering] > 0),
            key=lambda i: (tableau[i][-1] / tableau[i][entering], basis[i]),
        )
        _pivot(tableau, goal, leaving, entering)
        basis[leaving] = entering
    prices = [Fraction(0)] * columns
    for i, variable in enumerate(basis):
        if variable < columns:
            prices[variable] = tableau[i][-1]
    return prices, goal[columns : columns + rows]


def _pivot(
    tableau: list[list[Fraction]], goal: list[Fraction], leaving: int, entering: int
) -> None:
    head = tableau[leaving]
    share = head[entering]
    tableau[leaving] = head = [value / share for value in head]
    for i, row in enumerate(tableau):
        if i != leaving and row[entering]:
            factor = row[entering]
            tableau[i] = [value - factor * h for value, h in zip(row, head, strict=True)]
    factor = goal[entering]
    goal[:] = [value - factor * h for value, h in zip(goal, head, strict=True)]
