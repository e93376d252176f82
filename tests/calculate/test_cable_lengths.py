"""Cut lengths add up, term by term, by the cutting allowance (common practice)."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

import pytest
from small_room import board, cable, installation, point, position, run, walls

from asfitted.calculate.routes.cable_lengths import tail_key
from asfitted.calculate.routes.cable_routes import NO_WAY, find_paths
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.calculate.results import CableRoute

ON = walls()
A = ON["A"]
TRAY = run("T1", [(A, 0, 2500), (A, 8000, 2500)], ("A",))
DB1 = board(position(A, 1000, 1500))  # 600 high: its top is at 1800
X1 = point("X1", position(A, 6000, 1300), "5-pin socket", rating_a=32.0)


def route(**changes: Any) -> CableRoute:
    w1 = replace(cable("W1", "DB1", "X1"), **changes)
    job = installation(on=ON, boards=[DB1], points=[X1], cables=[w1], runs=[TRAY])
    return find_paths(job)["W1"]


def test_armoured_cable() -> None:
    found = route()
    # up 2500 - 1800, along 6000 - 1000, down 2500 - 1300
    assert found.path_m == pytest.approx(0.7 + 5.0 + 1.2)
    assert found.tails_m == pytest.approx(1.0 + 0.25)  # three-phase board, industrial socket
    assert found.length_m == pytest.approx(8.15)
    # 6.9 + 1.25 + 2 glands at 0.1 = 8.35; 5 % is 0.4175, at least 1 m; 9.35 up to whole metres
    assert found.cut_m == 10.0
    assert [part.length_m for part in found.parts] == [0.7, 5.0, 1.2, 1.0, 0.25, 0.2, 1.0, 0.65]
    assert found.parts[-1].words == "rounded up"


def test_twin_and_earth_has_no_glands_and_a_tenth_of_waste() -> None:
    found = route(family="twin_earth", cores=2, csa_mm2=2.5, drop="20 mm steel conduit")
    # 6.9 + 1.25 = 8.15; 10 % is 0.815; 8.965 up to the next tenth
    assert found.cut_m == 9.0


@pytest.mark.parametrize("family", ["swa", "twin_earth", "flex_rubber"])
@pytest.mark.parametrize("up", [300.0, 1234.5, 2800.0])
def test_parts_always_add_up_to_the_cut_length(family: str, up: float) -> None:
    w1 = cable("W1", "DB1", "X1", family=family, cores=3 if family != "twin_earth" else 2)
    x1 = point("X1", position(A, 6000, up))
    job = installation(on=ON, boards=[DB1], points=[x1], cables=[w1], runs=[TRAY])
    found = find_paths(job)["W1"]
    assert sum(part.length_m for part in found.parts) == pytest.approx(found.cut_m, abs=1e-9)


def test_a_measured_length_wins_and_the_way_is_still_drawn() -> None:
    found = route(measured_length_m=12.0)
    assert (found.length_m, found.measured) == (12.0, True)
    assert found.parts[0].words == "measured on site"
    assert found.legs


def test_an_existing_measured_cable_has_no_legs_and_nothing_to_cut() -> None:
    found = route(measured_length_m=12.0, state=State.EXISTING)
    assert (found.legs, found.length_m, found.cut_m, found.broken) == ((), 12.0, 0.0, "")
    assert found.parts[0].words == "measured on site; existing route not surveyed"


def test_a_cable_taken_away_has_no_way() -> None:
    found = route(state=State.REMOVED)
    assert (found.legs, found.length_m, found.cut_m) == ((), 0.0, 0.0)


def test_a_broken_way_keeps_a_figure_and_says_so() -> None:
    w1 = cable("W1", "DB1", "X9")
    x9 = point("X9", position(ON["C"], 2000, 1300))
    job = installation(on=ON, boards=[DB1], points=[x9], cables=[w1], runs=[TRAY])
    found = find_paths(job)["W1"]
    assert found.legs == ()
    assert "no run for power passes wall C" in found.broken
    # by A, D and C: 1000 along A, 6000 along D, 8000 - 2000 along C; 1500 to 1300 is 200 down
    assert found.parts[0].words == NO_WAY
    assert found.path_m == pytest.approx(1.0 + 6.0 + 6.0 + 0.2)


def test_a_large_isolator_gets_the_larger_tail() -> None:
    where = position(A, 1000, 1500)
    small = point("Q1", where, "isolator", rating_a=32.0)
    large = point("Q2", where, "isolator", rating_a=63.0)
    job = installation(on=ON, points=[small, large])
    assert [tail_key(job, tag) for tag in ("Q1", "Q2")] == ["isolator_small", "isolator_large"]
