"""Cutting stock: which lengths to cut from which stock pieces so that least stock is used.

Longest first into the piece that it fills best gives a plan at once; the linear bound rounded
down gives a second. Where neither meets the lower bound a search over patterns goes on until it
proves the least or has looked at so many states; the plan then states the bound beside its stock.
The limits are counts, never seconds, so that the same lengths give the same plan on any machine.
"""

from __future__ import annotations

import math
from bisect import bisect_left, insort
from dataclasses import dataclass, field
from itertools import islice
from typing import TYPE_CHECKING

from asfitted.calculate.cutting_bound import counting_bound, full_patterns, least_sum, lower_bound
from asfitted.errors import InputOutOfRangeError

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

STATES = 200_000


@dataclass(frozen=True)
class Effort:
    """How much a plan may be searched for.

    Attributes:
        states: States looked at before the search stops.
        patterns: Patterns of one stock piece looked at in one state; None for all.
        bound_lengths: Different lengths up to which the linear bound is worked out; a bound by
            counting serves above.
        bound_units: Units of the stock length up to which it is.
    """

    states: int = STATES
    patterns: int | None = None
    bound_lengths: float = math.inf
    bound_units: float = math.inf

    def takes_linear_bound(self, stock: int, demand: Mapping[int, int]) -> bool:
        """Tell whether the linear bound of so many lengths in such a stock piece is in reach."""
        return len(demand) <= self.bound_lengths and stock <= self.bound_units


THOROUGH = Effort()
#: For the many lists of a job: small ones are still proved, large ones state their gap.
FOR_A_JOB = Effort(states=300, patterns=60, bound_lengths=8, bound_units=300)


@dataclass(frozen=True)
class Cut:
    """One stock piece: its length and the lengths cut from it, longest first."""

    stock: int
    pieces: tuple[int, ...]

    @property
    def waste(self) -> int:
        """What is left over, in the unit of the lengths."""
        return self.stock - sum(self.pieces)


@dataclass(frozen=True)
class CutPlan:
    """A plan and how good it is.

    Attributes:
        cuts: One for each stock piece used, in order of their lengths.
        stock_used: Total length of the stock pieces used.
        bound: No plan can use less stock than this.
    """

    cuts: tuple[Cut, ...]
    stock_used: int
    bound: int

    @property
    def is_least(self) -> bool:
        """Whether it is proved that no plan uses less stock."""
        return self.stock_used == self.bound

    @property
    def waste(self) -> int:
        """What is left over in all."""
        return sum(cut.waste for cut in self.cuts)


def cutting_plan(
    demand: Mapping[int, int], stock: Mapping[int, int | None], effort: Effort = THOROUGH
) -> CutPlan:
    """Return a plan that uses little stock, the least where ``is_least`` says so.

    Args:
        demand: How many of each length, in whole units (mm), both above 0. Add the width of the
            saw cut to each length and once to each stock length where it matters.
        stock: Stock lengths in the same unit, and how many there are; None for as many as needed.
        effort: Where the search stops, by counts.

    Returns:
        The plan; equal inputs give equal plans.

    Raises:
        InputOutOfRangeError: a length is not above 0, is longer than every stock piece, or the
            stock is too little (or no plan was found in it).

    Source:
        Gilmore and Gomory, Operations Research 9 (1961), for the bound; best-fit decreasing and
        branch and bound as in the literature on bin packing.

    Example:
        >>> cutting_plan({7: 2, 5: 2, 3: 4}, {10: None}).stock_used
        40
    """
    _require(demand, stock)
    bound = _bound(demand, stock, effort)
    fits = (_best_fit(demand, stock, largest=True), _best_fit(demand, stock, largest=False))
    plans = [plan for plan in (*fits, *_rounded(demand, stock, effort)) if plan]
    best = min(plans, key=lambda plan: (_used(plan), len(plan)), default=None)
    if best is None or _used(best) > bound:
        search = _Search(tuple(sorted(demand, reverse=True)), best, bound, effort)
        left = tuple(demand[length] for length in search.lengths)
        complete = search.run(left, tuple(sorted(stock.items(), reverse=True)))
        best = search.best
        if complete and best is not None:
            bound = _used(best)
    if best is None:
        raise InputOutOfRangeError("the stock is too little for the lengths")
    ordered = sorted(best, key=lambda cut: (-cut.stock, tuple(-p for p in cut.pieces)))
    return CutPlan(tuple(ordered), _used(best), bound)


def _require(demand: Mapping[int, int], stock: Mapping[int, int | None]) -> None:
    if not demand or not stock:
        raise InputOutOfRangeError("give at least one length and one stock length")
    if min(*demand, *stock) <= 0 or min(demand.values()) <= 0:
        raise InputOutOfRangeError("lengths and counts must be above 0")
    if max(demand) > max(stock):
        raise InputOutOfRangeError(
            f"{max(demand)} is longer than the longest stock piece, {max(stock)}"
        )


def _used(cuts: list[Cut]) -> int:
    return sum(cut.stock for cut in cuts)


def _bound(demand: Mapping[int, int], stock: Mapping[int, int | None], effort: Effort) -> int:
    """Return a lower bound of the stock used: the material, or the linear bound of one stock."""
    material = sum(length * count for length, count in demand.items())
    if len(stock) > 1:
        return least_sum(material, tuple(stock))
    only = next(iter(stock))
    if not effort.takes_linear_bound(only, demand):
        return counting_bound(only, demand) * only
    least, _ = lower_bound(only, list(demand), list(demand.values()))
    return math.ceil(least) * only


def _best_fit(
    demand: Mapping[int, int], stock: Mapping[int, int | None], *, largest: bool
) -> list[Cut] | None:
    """Return the plan of longest first, into the piece that it fills best; None if none fits.

    A fresh piece is the largest or the smallest that holds the length; at the end each piece is
    changed for the smallest of the unlimited lengths that holds its cuts.
    """
    left: dict[int, float] = {s: math.inf if n is None else n for s, n in stock.items()}
    begun: list[tuple[int, list[int]]] = []
    rooms: list[tuple[int, int]] = []  # room left in a piece and which, least room first
    for length in sorted(demand, reverse=True):
        for _ in range(demand[length]):
            place = bisect_left(rooms, (length, -1))
            if place < len(rooms):
                room, piece = rooms.pop(place)
                begun[piece][1].append(length)
                insort(rooms, (room - length, piece))
                continue
            pick = max if largest else min
            fresh = pick((s for s, n in left.items() if n > 0 and s >= length), default=None)
            if fresh is None:
                return None
            left[fresh] -= 1
            insort(rooms, (fresh - length, len(begun)))
            begun.append((fresh, [length]))
    endless = [s for s, n in stock.items() if n is None]
    return [
        Cut(min([s, *(e for e in endless if sum(cuts) <= e < s)]), tuple(cuts)) for s, cuts in begun
    ]


def _rounded(
    demand: Mapping[int, int], stock: Mapping[int, int | None], effort: Effort
) -> Iterator[list[Cut]]:
    """Yield the linear plan rounded down, with the rest searched for: one unlimited stock only."""
    only, available = next(iter(stock.items()))
    if len(stock) > 1 or available is not None:
        return
    if not effort.takes_linear_bound(only, demand):
        return
    lengths = sorted(demand, reverse=True)
    _, used = lower_bound(only, lengths, [demand[length] for length in lengths])
    left, cuts = dict(demand), list[Cut]()
    for pattern, times in used.items():
        pieces = tuple(p for p, n in zip(lengths, pattern, strict=True) for _ in range(n))
        for _ in range(math.floor(times)):
            took = []
            for piece in pieces:
                if left[piece] > 0:
                    left[piece] -= 1
                    took.append(piece)
            cuts.append(Cut(only, tuple(took)))
    if not cuts:
        return
    rest = {length: count for length, count in left.items() if count > 0}
    yield [*cuts, *(cutting_plan(rest, stock, effort).cuts if rest else ())]


@dataclass
class _Search:
    """Depth first over patterns; the longest length left is always in the next piece."""

    lengths: tuple[int, ...]
    best: list[Cut] | None
    bound: int
    effort: Effort
    states: int = 0
    curtailed: bool = False  # a state had more patterns than were looked at
    seen: dict[tuple[tuple[int, ...], tuple[tuple[int, int | None], ...]], int] = field(
        default_factory=dict
    )

    def run(self, left: tuple[int, ...], stock: tuple[tuple[int, int | None], ...]) -> bool:
        """Improve ``best``; return whether every plan was looked at or ruled out."""
        stack: list[tuple[tuple[int, ...], tuple[tuple[int, int | None], ...], tuple[Cut, ...]]]
        stack = [(left, stock, ())]
        while stack:
            if self.best is not None and _used(self.best) <= self.bound:
                return True
            self.states += 1
            if self.states > self.effort.states:
                return False
            wanted, pieces, cuts = stack.pop()
            if not any(wanted):
                self._keep(list(cuts))
            elif self._worth(wanted, pieces, cuts):
                stack.extend(self._next(wanted, pieces, cuts))
        return not self.curtailed

    def _keep(self, cuts: list[Cut]) -> None:
        if self.best is None or _used(cuts) < _used(self.best):
            self.best = cuts

    def _worth(
        self,
        wanted: tuple[int, ...],
        pieces: tuple[tuple[int, int | None], ...],
        cuts: tuple[Cut, ...],
    ) -> bool:
        """Tell whether a state can still lead to less stock, and was not met with less before."""
        used = sum(cut.stock for cut in cuts)
        least = used + sum(n * length for n, length in zip(wanted, self.lengths, strict=True))
        if self.best is not None and least >= _used(self.best):
            return False
        before = self.seen.get((wanted, pieces))
        if before is not None and before <= used:
            return False
        self.seen[wanted, pieces] = used
        return True

    def _next(
        self,
        wanted: tuple[int, ...],
        pieces: tuple[tuple[int, int | None], ...],
        cuts: tuple[Cut, ...],
    ) -> list[tuple[tuple[int, ...], tuple[tuple[int, int | None], ...], tuple[Cut, ...]]]:
        """Return the states after one more piece, the fullest piece last so that it goes first."""
        found = []
        for place, (stock, count) in enumerate(pieces):
            if count == 0:
                continue
            after = pieces
            if count is not None:
                after = (*pieces[:place], (stock, count - 1), *pieces[place + 1 :])
            for taken in self._looked_at(wanted, stock):
                rest = tuple(n - t for n, t in zip(wanted, taken, strict=True))
                cut = Cut(
                    stock,
                    tuple(p for p, n in zip(self.lengths, taken, strict=True) for _ in range(n)),
                )
                found.append((rest, after, (*cuts, cut)))
        return sorted(found, key=lambda state: -state[2][-1].waste)

    def _looked_at(self, wanted: tuple[int, ...], stock: int) -> list[tuple[int, ...]]:
        """Return the full patterns of a stock piece that hold the longest length left.

        As many as the effort allows.
        """
        most = self.effort.patterns
        longest = next(i for i, n in enumerate(wanted) if n)
        full = full_patterns(stock, self.lengths, wanted, longest)
        found = list(islice(full, None if most is None else most + 1))
        if most is not None and len(found) > most:
            self.curtailed = True
        return found[:most]
