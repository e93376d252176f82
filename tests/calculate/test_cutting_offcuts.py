"""Offcuts in hand are used where that orders less, and nothing is cut into for no gain."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from asfitted.calculate.cutting_offcuts import plan_with_offcuts
from asfitted.errors import InputOutOfRangeError


def test_an_offcut_saves_a_bar() -> None:
    # by hand: 2000 + 950 in one bar, 1400 + 1400 in the next, 1200 from the offcut of 1300
    demand = {2000: 1, 1400: 2, 1200: 1, 950: 1}
    plan = plan_with_offcuts(demand, {1300: 1}, (3000,))
    assert (plan.ordered, plan.bound, plan.is_least) == (6000, 6000, True)
    assert [cut.pieces for cut in plan.from_hand] == [(1200,)]
    assert plan_with_offcuts(demand, {}, (3000,)).ordered == 9000


def test_an_offcut_that_saves_nothing_stays_whole() -> None:
    plan = plan_with_offcuts({2000: 1, 900: 1}, {1000: 1}, (3000,))
    assert plan.ordered == 3000
    assert plan.from_hand == ()


def test_sold_by_the_metre_only_what_hand_does_not_give_is_ordered() -> None:
    # by hand: 17 + 8 out of the reel of 26, the 15 is ordered to length
    plan = plan_with_offcuts({17: 1, 15: 1, 8: 1}, {26: 1}, ())
    assert plan.ordered == 15
    assert [cut.pieces for cut in plan.from_hand] == [(17, 8)]
    assert [(cut.stock, cut.waste) for cut in plan.to_order] == [(15, 0)]
    assert plan.is_least


@settings(max_examples=80, deadline=None)
@given(
    st.lists(st.integers(2, 30), min_size=1, max_size=9),
    st.lists(st.integers(1, 30), max_size=3),
)
def test_every_length_is_cut_once_and_never_more_is_ordered_than_without(
    pieces: list[int], hand: list[int]
) -> None:
    plan = plan_with_offcuts(Counter(pieces), Counter(hand), (30,))
    cuts = [*plan.from_hand, *plan.to_order]
    assert Counter(p for cut in cuts for p in cut.pieces) == Counter(pieces)
    assert all(cut.waste >= 0 for cut in cuts)
    assert not Counter(cut.stock for cut in plan.from_hand) - Counter(hand)
    assert plan.bound <= plan.ordered <= plan_with_offcuts(Counter(pieces), {}, (30,)).ordered


def test_a_length_longer_than_every_piece_is_refused() -> None:
    with pytest.raises(InputOutOfRangeError, match="longer than every piece"):
        plan_with_offcuts({40: 1}, {35: 1}, (30,))
    with pytest.raises(InputOutOfRangeError, match="above 0"):
        plan_with_offcuts({40: 0}, {}, (50,))
