from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from asfitted.layout.elevation.spread import spread


def test_labels_far_apart_stay_where_they_are() -> None:
    assert spread([10.0, 30.0, 50.0], 4.0, 0.0, 60.0) == [10.0, 30.0, 50.0]


def test_two_near_labels_part_about_their_middle() -> None:
    assert spread([10.0, 11.0], 4.0, 0.0, 60.0) == [8.5, 12.5]


@given(st.lists(st.floats(0, 100), min_size=1, max_size=20))
def test_order_pitch_and_limits_always_hold(wanted: list[float]) -> None:
    places = spread(sorted(wanted), 4.0, 0.0, 100.0)
    assert len(places) == len(wanted)
    assert all(b - a >= 4.0 - 1e-6 for a, b in pairwise(places))
    assert places[0] >= -1e-6
    assert places[-1] <= 100.0 + 1e-6
