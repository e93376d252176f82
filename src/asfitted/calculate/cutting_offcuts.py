"""Cutting from pieces in hand first: what is in hand costs nothing, what is ordered does.

Least is ordered; of the plans that order as little, the one that begins least of what is in hand.
"""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import dataclass, field
from itertools import islice
from typing import TYPE_CHECKING

from asfitted.calculate.cutting_bound import full_patterns
from asfitted.calculate.cutting_stock import FOR_A_JOB, Cut, Effort, cutting_plan
from asfitted.errors import InputOutOfRangeError

if TYPE_CHECKING:
    from collections.abc import Mapping

SHARES = 200  # shares of the lengths between hand and order that are looked at


@dataclass(frozen=True)
class HandPlan:
    """Cuts from pieces in hand and from pieces to order.

    Attributes:
        from_hand: One for each piece in hand that is cut into.
        to_order: One for each piece to order, in order of their lengths.
        ordered: Total length of the pieces to order, in the unit of the lengths.
        bound: No plan can order less.
    """

    from_hand: tuple[Cut, ...]
    to_order: tuple[Cut, ...]
    ordered: int
    bound: int

    @property
    def is_least(self) -> bool:
        """Whether it is proved that no plan orders less."""
        return self.ordered == self.bound

    @property
    def taken(self) -> int:
        """Total length of the pieces in hand that are cut into."""
        return sum(cut.stock for cut in self.from_hand)


def plan_with_offcuts(
    demand: Mapping[int, int],
    in_hand: Mapping[int, int],
    to_order: tuple[int, ...],
    effort: Effort = FOR_A_JOB,
) -> HandPlan:
    """Return a plan that orders little, the least where ``is_least`` says so.

    Args:
        demand: How many of each length, in whole units (mm), both above 0.
        in_hand: Pieces in hand: length and how many.
        to_order: Lengths that can be ordered, as many as needed; empty where every length is
            cut to measure by the seller, so that what is ordered has no rest.
        effort: Where the search stops, by counts.

    Raises:
        InputOutOfRangeError: a length or count is not above 0, or a length is longer than every
            piece.

    Example:
        >>> plan_with_offcuts({14: 1, 16: 1}, {15: 1}, (25, 50)).ordered
        25
    """
    if not demand or min(*demand, *demand.values(), *in_hand, *in_hand.values(), *to_order) <= 0:
        raise InputOutOfRangeError("lengths and counts must be above 0")
    unit = math.gcd(*demand, *to_order)
    small = {length // unit: count for length, count in demand.items()}
    # a rest shorter than the unit is never used, so pieces in hand may be rounded down to it
    pieces = sorted((length for length, n in in_hand.items() for _ in range(n)), reverse=True)
    search = _Shares(
        tuple(sorted(small, reverse=True)),
        tuple(length // unit for length in pieces),
        tuple(length // unit for length in to_order),
        effort,
    )
    search.run(small)
    if search.best is None:
        raise InputOutOfRangeError("a length is longer than every piece in hand or to order")
    hand, rest, ordered, _ = search.best
    return HandPlan(
        tuple(Cut(pieces[i], tuple(p * unit for p in cut)) for i, cut in enumerate(hand) if cut),
        tuple(Cut(cut.stock * unit, tuple(p * unit for p in cut.pieces)) for cut in rest),
        ordered * unit,
        search.proved_bound(small) * unit,
    )


_Share = tuple[tuple[tuple[int, ...], ...], tuple[Cut, ...], int, int]


@dataclass
class _Shares:
    """Depth first over what each piece in hand gives; the rest is ordered."""

    lengths: tuple[int, ...]
    pieces: tuple[int, ...]
    to_order: tuple[int, ...]
    effort: Effort
    best: _Share | None = None
    bounds: list[int] = field(default_factory=list)
    looked: int = 0
    curtailed: bool = False

    def run(self, demand: Mapping[int, int]) -> None:
        """Look at the shares, fullest pieces first."""
        wanted = tuple(demand[length] for length in self.lengths)
        self._share(0, wanted, ())

    def proved_bound(self, demand: Mapping[int, int]) -> int:
        """Return what must be ordered at least."""
        if not self.curtailed:
            return min(self.bounds)
        left = sum(length * n for length, n in demand.items()) - sum(self.pieces)
        step = math.gcd(*self.to_order) if self.to_order else 1
        return max(0, -(-left // step) * step)

    def _share(
        self, place: int, wanted: tuple[int, ...], given: tuple[tuple[int, ...], ...]
    ) -> None:
        if self._is_hopeless(place, wanted) or self.looked >= SHARES:
            self.curtailed = self.curtailed or self.looked >= SHARES
            return
        if place == len(self.pieces) or not any(wanted):
            self._order(wanted, given)
            return
        for taken in self._fillings(place, wanted):
            cuts = tuple(p for p, n in zip(self.lengths, taken, strict=True) for _ in range(n))
            rest = tuple(n - t for n, t in zip(wanted, taken, strict=True))
            self._share(place + 1, rest, (*given, cuts))

    def _is_hopeless(self, place: int, wanted: tuple[int, ...]) -> bool:
        """Tell whether even full use of the other pieces in hand orders more than the best."""
        if self.best is None:
            return False
        material = sum(length * n for length, n in zip(self.lengths, wanted, strict=True))
        return material - sum(self.pieces[place:]) > self.best[2]

    def _order(self, wanted: tuple[int, ...], given: tuple[tuple[int, ...], ...]) -> None:
        self.looked += 1
        rest = {p: n for p, n in zip(self.lengths, wanted, strict=True) if n}
        cuts: tuple[Cut, ...] = ()
        ordered = bound = 0
        if rest and not self.to_order:
            cuts = tuple(Cut(p, (p,)) for p, n in rest.items() for _ in range(n))
            ordered = bound = sum(cut.stock for cut in cuts)
        elif rest:
            if max(rest) > max(self.to_order):
                return
            plan = cutting_plan(rest, dict.fromkeys(self.to_order), self.effort)
            cuts, ordered, bound = plan.cuts, plan.stock_used, plan.bound
        self.bounds.append(bound)
        begun = sum(self.pieces[i] for i, cut in enumerate(given) if cut)
        if self.best is None or (ordered, begun) < self.best[2:]:
            self.best = (given, cuts, ordered, begun)

    def _fillings(self, place: int, wanted: tuple[int, ...]) -> list[tuple[int, ...]]:
        """Return the full patterns of a piece in hand, fullest first, and the empty one last."""
        piece, most = self.pieces[place], self.effort.patterns
        full = full_patterns(piece, self.lengths, wanted)
        found = list(islice(full, None if most is None else most + 1))
        if most is not None and len(found) > most:
            self.curtailed = True
            found = found[:most]
        left = Counter({taken: self._length(taken) for taken in found})
        ordered = sorted(found, key=lambda taken: -left[taken])
        nothing = (0,) * len(wanted)
        return ordered if nothing in ordered else [*ordered, nothing]

    def _length(self, taken: tuple[int, ...]) -> int:
        return sum(p * n for p, n in zip(self.lengths, taken, strict=True))
