"""Branched trenches against known least trees; sources beside each."""

from __future__ import annotations

import math

import pytest

from asfitted.calculate.routes.branched_trench import branched_trench, unbranched_trench
from asfitted.errors import InputOutOfRangeError
from asfitted.geometry import Point


def test_two_places_are_joined_straight() -> None:
    found = branched_trench([Point(0, 0), Point(3, 4)])
    assert (found.length, found.branches) == (5.0, ())


def test_a_wide_corner_needs_no_branch() -> None:
    # a corner of 120 degrees or more is itself the best branch (Torricelli's theorem)
    corner = [Point(-1, 0), Point(0, 0), Point(math.cos(math.pi / 3), math.sin(math.pi / 3))]
    assert branched_trench(corner).length == pytest.approx(2.0, abs=1e-6)


def test_a_right_corner_by_the_closed_formula() -> None:
    # least tree of a triangle with sides a, b, c and area A:
    # root((a2 + b2 + c2)/2 + 2 root3 A), here root(25 + 2 x 1.73205 x 6) for 3-4-5 (geometry)
    found = branched_trench([Point(0, 0), Point(3, 0), Point(0, 4)])
    assert found.length == pytest.approx(math.sqrt(25 + 12 * math.sqrt(3)), abs=1e-6)


def test_arms_meet_at_120_degrees() -> None:
    places = [Point(0, 0), Point(9, 1), Point(7, 8), Point(1, 6)]
    found = branched_trench(places)
    stand = [*places, *found.branches]
    for branch in range(len(places), len(stand)):
        arms = [stand[b if a == branch else a] for a, b in found.links if branch in (a, b)]
        pull_x = pull_y = 0.0
        for arm in arms:
            run = math.hypot(arm.x - stand[branch].x, arm.y - stand[branch].y)
            pull_x += (arm.x - stand[branch].x) / run
            pull_y += (arm.y - stand[branch].y) / run
        # three equal pulls that balance stand at 120 degrees to each other
        assert math.hypot(pull_x, pull_y) < 1e-3


def test_regular_hexagon_is_its_own_best() -> None:
    # five of the six sides: published for the regular hexagon in the same article as the triangle
    places = [Point(math.cos(i * math.pi / 3), math.sin(i * math.pi / 3)) for i in range(6)]
    assert branched_trench(places).length == pytest.approx(5.0, abs=1e-6)


def test_never_longer_than_unbranched_nor_shorter_than_the_known_bound() -> None:
    places = [Point(0, 0), Point(14, 2), Point(20, 11), Point(6, 17), Point(3, 9)]
    plain, least = unbranched_trench(places).length, branched_trench(places).length
    # least / plain lies between root3 / 2 (Gilbert and Pollak's ratio) and 1
    assert plain * math.sqrt(3) / 2 <= least <= plain


def test_too_few_or_too_many_places_are_refused() -> None:
    with pytest.raises(InputOutOfRangeError, match="2 places"):
        branched_trench([Point(0, 0)])
    with pytest.raises(InputOutOfRangeError, match="up to 6"):
        branched_trench([Point(i, i * i) for i in range(7)])
