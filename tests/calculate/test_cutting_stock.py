"""Cutting plans: true to the demand, and the least wherever they say so."""

from __future__ import annotations

import itertools
from collections import Counter
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from asfitted.calculate.cutting_bound import (
    counting_bound,
    cutting_patterns,
    full_patterns,
    lower_bound,
)
from asfitted.calculate.cutting_stock import FOR_A_JOB, Effort, cutting_plan
from asfitted.errors import InputOutOfRangeError


def least_count(stock: int, pieces: tuple[int, ...]) -> int:
    """Count the fewest stock pieces by trying every subset: independent of the plan's search."""

    @cache
    def fewest(left: tuple[int, ...]) -> int:
        if not left:
            return 0
        first, rest = left[0], left[1:]
        best = len(left)
        for size in range(len(rest) + 1):
            for chosen in itertools.combinations(range(len(rest)), size):
                if first + sum(rest[i] for i in chosen) <= stock:
                    others = tuple(p for i, p in enumerate(rest) if i not in chosen)
                    best = min(best, 1 + fewest(others))
        return best

    return fewest(tuple(sorted(pieces, reverse=True)))


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(2, 20), min_size=1, max_size=8), st.integers(20, 30))
def test_small_plans_are_the_least_there_is(pieces: list[int], stock: int) -> None:
    plan = cutting_plan(Counter(pieces), {stock: None})
    assert Counter(p for cut in plan.cuts for p in cut.pieces) == Counter(pieces)
    assert all(cut.waste >= 0 for cut in plan.cuts)
    assert plan.is_least
    assert len(plan.cuts) == least_count(stock, tuple(pieces))
    assert plan.bound <= plan.stock_used


def test_a_plan_better_than_best_fit_is_found() -> None:
    # longest first: 6+4, 4+3, 3+3... needs 3 pieces of 10 for 6 4 4 3 3 at best: by hand 6+4, 4+3+3
    plan = cutting_plan({6: 1, 4: 2, 3: 2}, {10: None})
    assert len(plan.cuts) == 2
    assert plan.waste == 0


def test_two_stock_lengths_use_the_shorter_where_that_is_less() -> None:
    # by hand: 2.9 m fits 3 m stock; 3.1 m needs 6 m stock
    plan = cutting_plan({2900: 1, 3100: 1}, {3000: None, 6000: None})
    assert plan.stock_used == 6000
    assert plan.cuts[0].pieces == (3100, 2900)
    assert cutting_plan({2900: 1}, {3000: None, 6000: None}).stock_used == 3000


def test_stock_that_runs_out_is_said() -> None:
    assert cutting_plan({5: 2}, {10: 1}).stock_used == 10
    for demand, stock in (({5: 3}, {10: 1}), ({11: 1}, {10: None}), ({}, {10: None})):
        with pytest.raises(InputOutOfRangeError):
            cutting_plan(demand, stock)
    with pytest.raises(InputOutOfRangeError, match="above 0"):
        cutting_plan({0: 1}, {10: None})


def test_a_plan_that_is_not_proved_says_so() -> None:
    # by hand: 6+2+2 and 3+3+2+2 in 10, nothing left; longest first begins a third piece
    demand = {6: 1, 3: 2, 2: 4}
    assert cutting_plan(demand, {10: None}).stock_used == 20
    plan = cutting_plan(demand, {10: None}, Effort(states=0, bound_lengths=0))
    assert (plan.stock_used, plan.bound, plan.is_least) == (30, 20, False)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(2, 20), min_size=1, max_size=8), st.integers(20, 30))
def test_counting_never_bounds_above_the_least(pieces: list[int], stock: int) -> None:
    assert counting_bound(stock, Counter(pieces)) <= least_count(stock, tuple(pieces))


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(2, 9), min_size=1, max_size=6), st.integers(9, 25))
def test_full_patterns_leave_no_room_for_another_length(pieces: list[int], stock: int) -> None:
    wanted = Counter(pieces)
    lengths = tuple(sorted(wanted, reverse=True))
    counts = tuple(wanted[p] for p in lengths)
    every = itertools.product(*(range(n + 1) for n in counts))
    full = set()
    for taken in every:
        room = stock - sum(p * n for p, n in zip(lengths, taken, strict=True))
        left = [p for p, n, t in zip(lengths, counts, taken, strict=True) if n > t]
        if room >= 0 and (not left or min(left) > room):
            full.add(taken)
    assert set(full_patterns(stock, lengths, counts)) == full


def test_the_same_lengths_give_the_same_plan_within_the_limits_of_a_job() -> None:
    # 60 different lengths: too many to prove, so the plan states its bound and ends
    demand = {1010 + 37 * i: 1 + i % 3 for i in range(60)}
    plans = [cutting_plan(demand, {3750: None}, FOR_A_JOB) for _ in range(2)]
    assert plans[0] == plans[1]
    cut = Counter(p for one in plans[0].cuts for p in one.pieces)
    assert cut == Counter(demand)
    assert plans[0].bound <= plans[0].stock_used <= 1.1 * plans[0].bound


def test_the_bound_of_published_rolls() -> None:
    # open optimisation course notebook on column generation: 37 patterns, 452.25 (seen)
    assert len(cutting_patterns(100, [14, 31, 36, 45])) == 37
    bound, used = lower_bound(100, [14, 31, 36, 45], [211, 395, 610, 97])
    assert float(bound) == 452.25
    for place, wanted in enumerate([211, 395, 610, 97]):
        assert sum(pattern[place] * times for pattern, times in used.items()) >= wanted
