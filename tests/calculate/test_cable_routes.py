"""Ways of cables: those of the pottery job worked by hand, and what must hold for any job."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from small_room import board, cable, declared, installation, place, point, position, run, walls

from asfitted.calculate.containment.sections import fill_sections
from asfitted.calculate.routes.cable_routes import find_paths
from asfitted.resolve import resolve
from asfitted.resolve.installation import Opening
from asfitted.spec.load_job import load_job

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.results import CableRoute
    from asfitted.resolve.installation import Containment, Installation

SPECS = Path(__file__).parents[2] / "specs"
ON = walls()
A, B, C, D = (ON[name] for name in "ABCD")
TRAY = run("T1", [(A, 0, 2500), (A, 8000, 2500)], ("A",))
DB1 = board(position(A, 1000, 1500))  # its top is at 1800


@pytest.fixture(scope="module")
def pottery() -> Installation:
    return resolve(load_job(SPECS / "pottery-studio.yaml"))


@pytest.fixture(scope="module")
def paths(pottery: Installation) -> Mapping[str, CableRoute]:
    return find_paths(pottery)


# Worked by hand from the job: walls A and C are 8.0 m long, B and D 6.4 m. T1 at 2.9 m runs from
# D 1.0 by A to B 5.6; T2 at 2.9 m from A 5.6 over to C 2.4; T3 at 2.55 m from
# C 6.6 by D and A to B 6.1; T4 rises from DB1 to T1 at D 5.4, T5 from DB2 to T1 at B 4.4.
# DB1: D 5.4, top 1.6 + 0.35 = 1.95. DB2: B 4.4, top 1.6 + 0.225 = 1.825. Cabinet: C 7.3, top
# 2.0 + 0.225 = 2.225.
BY_HAND = {
    # X1, B 1.0 at 1.3: up 0.95, D 5.4 to 6.4, all of A, B to 1.0, down 1.6
    "W05": 0.95 + 1.0 + 8.0 + 1.0 + 1.6,
    # X3, A 6.7 at 1.3
    "W07": 0.95 + 1.0 + 6.7 + 1.6,
    # Q1, C 2.4 at 1.5: A to 5.6, over 6.4, down 1.4
    "W08": 0.95 + 1.0 + 5.6 + 6.4 + 1.4,
    # Q1 to the kiln, C 1.7 at 0.6: straight, down 0.9 and along 0.7
    "W08-2": 0.9 + 0.7,
    # Q2, D 2.2 at 1.5
    "W09": 0.95 + 3.2 + 1.4,
    # Q3, D 3.6 at 1.5: by the tray, though 0.45 + 1.8 clipped along the wall would be shorter
    "W10": 0.95 + 1.8 + 1.4,
    # the starter, D 4.1 at 1.5, clipped level from Q3; the fan over it at 3.25: straight up
    "W10-2": 0.5,
    "W10-3": 1.75,
    # DB2: B to 4.4, down to its top
    "W11": 0.95 + 1.0 + 8.0 + 4.4 + 1.075,
    # F1, C 7.3 at 1.35, clipped at 1.35 from the side of DB1: D 5.4 to the corner, C 8.0 to 7.3
    "W12": 5.4 + 0.7,
    # S1 B 2.0 to S2 A 5.9, both at 1.2: up 1.7, 2.0 + 2.1, down 1.7
    "W13-2": 1.7 + 4.1 + 1.7,
    # S4, B 5.2 at 1.2: up T5 1.075, B 4.4 to 5.2, down 1.7
    "W14": 1.075 + 0.8 + 1.7,
    # F3, B 3.6 at 1.2: up T5 1.075, B 4.4 back to 3.6, down 1.7
    "W15": 1.075 + 0.8 + 1.7,
    # switch A 1.75 at 1.2 to luminaire A 2.0 at 3.5, 1.6 out: up 1.7, along 0.25, up 0.6, out 1.6
    "W16-2": 1.7 + 0.25 + 0.6 + 1.6,
    # luminaires along the soffit, A 2.0 to A 6.0, both 1.6 out; then 1.6 to 4.8 out
    "W16-3": 4.0,
    "W16-4": 3.2,
    # spur A 7.5 at 1.2 to the box outside at 2.7: up 1.5, through 0.3
    "W17-2": 1.5 + 0.3,
    # box to floodlight, both outside: up 0.5
    "W17-3": 0.5,
    # camera B 6.0 at 3.0: up 0.325, C 7.3 to 8.0, all of D and A, B to 6.0, up 0.45
    "D03": 0.325 + 0.7 + 6.4 + 8.0 + 6.0 + 0.45,
    # yard gate: B to 6.1, down 2.25 to 0.3, through 0.3, duct 58
    "D04": 0.325 + 0.7 + 6.4 + 8.0 + 6.1 + 2.25 + 0.3 + 58.0,
    # access point A 4.0 at 3.5, 3.2 out
    "D06": 0.325 + 0.7 + 6.4 + 4.0 + 0.95 + 3.2,
}


@pytest.mark.parametrize("tag", BY_HAND)
def test_length_worked_by_hand(paths: Mapping[str, CableRoute], tag: str) -> None:
    assert paths[tag].path_m == pytest.approx(BY_HAND[tag], abs=0.0005)


def test_no_cable_of_the_pottery_is_broken_or_forbidden(paths: Mapping[str, CableRoute]) -> None:
    assert [tag for tag, route in paths.items() if route.broken or route.forbidden] == []


def test_the_kiln_goes_over_by_the_crossing(paths: Mapping[str, CableRoute]) -> None:
    used = dict.fromkeys(leg.containment for leg in paths["W08"].legs if leg.containment)
    assert list(used) == ["T4", "T1", "T2"]
    # the crossing is 6.4 m, from wall to wall, and nothing else lies in it
    over = [leg.length_mm for leg in paths["W08"].legs if leg.containment == "T2" and not leg.wall]
    assert over == pytest.approx([6400])


def test_legs_follow_each_other_without_a_gap(paths: Mapping[str, CableRoute]) -> None:
    for route in paths.values():
        for before, after in zip(route.legs, route.legs[1:], strict=False):
            if "declared" not in (before.kind, after.kind):
                assert before.end == pytest.approx(after.start, abs=0.01), route.cable


def test_methods_and_enclosures(paths: Mapping[str, CableRoute]) -> None:
    kinds = {(leg.kind, leg.enclosure, leg.method) for r in paths.values() for leg in r.legs}
    assert ("containment", "perforated tray", "E") in kinds
    assert ("drop", "steel conduit", "B") in kinds
    assert ("drop", "clipped", "C") in kinds
    assert ("declared", "buried duct", "D") in kinds
    assert ("through-wall", "through the wall", "C") in kinds
    assert ("clipped", "flexible conduit", "B") in kinds


def test_the_same_job_gives_the_same_ways(
    pottery: Installation, paths: Mapping[str, CableRoute]
) -> None:
    assert dict(find_paths(pottery)) == dict(paths)


def test_the_order_of_runs_in_the_spec_changes_no_length(
    pottery: Installation, paths: Mapping[str, CableRoute]
) -> None:
    turned = dict(reversed(list(pottery.containment.items())))
    again = find_paths(replace(pottery, containment=turned))
    assert {t: r.path_m for t, r in again.items()} == {t: r.path_m for t, r in paths.items()}


@pytest.mark.parametrize("tag", ["T1", "T2", "T3"])
def test_the_direction_a_run_is_written_in_changes_no_length(
    pottery: Installation, paths: Mapping[str, CableRoute], tag: str
) -> None:
    one = pottery.containment[tag]
    turned = replace(one, path=one.path[::-1], walls=one.walls[::-1])
    again = find_paths(replace(pottery, containment={**pottery.containment, tag: turned}))
    for name, route in paths.items():
        assert again[name].path_m == route.path_m
        assert [leg.words for leg in again[name].legs if not leg.section] == [
            leg.words for leg in route.legs if not leg.section
        ]


def one_way(*runs: Containment, to: Any, openings: Any = None, **changes: Any) -> CableRoute:
    on = walls(openings)
    w1 = cable("W1", "DB1", "X1", **changes)
    job = installation(on=on, boards=[DB1], points=[point("X1", to)], cables=[w1], runs=runs)
    return find_paths(job)["W1"]


def test_moving_a_point_further_never_shortens_its_cable() -> None:
    further = [one_way(TRAY, to=position(A, x, 1200)).path_m for x in range(1000, 8001, 250)]
    assert further == sorted(further)
    lower = [one_way(TRAY, to=position(A, 6000, z)).path_m for z in range(2500, 0, -250)]
    assert lower == sorted(lower)
    out = [one_way(TRAY, to=position(A, 6000, 2900, x)).path_m for x in range(0, 5000, 500)]
    assert out == sorted(out)


def test_beyond_the_end_of_a_run_the_cable_is_clipped_at_its_level() -> None:
    short = run("T1", [(A, 0, 2500), (A, 4000, 2500)], ("A",))
    legs = one_way(short, to=position(A, 6000, 1200)).legs
    # along to 4000, clipped 2000 on, down 1300
    assert [(leg.kind, leg.length_mm) for leg in legs[-3:]] == [
        ("containment", 3000), ("clipped", 2000), ("drop", 1300)
    ]  # fmt: skip


def test_a_drop_goes_beside_a_window() -> None:
    window = Opening("window", "window", 5000.0, 2000.0, 1000.0, 1200.0)
    route = one_way(TRAY, to=position(A, 6000, 500), openings={"A": (window,)})
    # 700 up, tray to 4900 (100 beside the frame), 2000 down, 1100 along: as short as the other side
    assert route.path_m == pytest.approx(0.7 + 3.9 + 2.0 + 1.1)


def test_broken_words_name_the_wall_and_the_cure() -> None:
    broken = one_way(TRAY, to=position(C, 1000, 1200)).broken
    assert broken == (
        "no run for power passes wall C, where X1 is; "
        "add a run or say `route: clipped direct, 2.4 m up`"
    )


def test_broken_words_for_runs_that_do_not_meet() -> None:
    apart = run("T9", [(C, 0, 2500), (C, 8000, 2500)], ("C",))
    broken = one_way(TRAY, apart, to=position(C, 1000, 1200)).broken
    # walls A and C lie 6 m apart, and both runs are 2.5 m up
    assert broken.startswith(
        "no run for power joins DB1 (wall A) and X1 (wall C) "
        "(T1 and T9 do not meet: 6.00 m apart); add a run"
    )


def test_data_is_kept_out_of_a_power_run_unless_it_is_told() -> None:
    away = position(A, 7900, 300)
    by_itself = one_way(TRAY, to=position(C, 1000, 1200), band="data", family="cat6", cores=8)
    assert "no run for data passes wall A" in by_itself.broken
    told = one_way(TRAY, to=away, band="data", family="cat6", cores=8, via=("T1",))
    assert (told.broken, told.forbidden) == ("", ("T1",))
    assert any(leg.containment == "T1" for leg in told.legs)


def test_a_run_it_is_told_to_use_is_reached_along_the_walls_from_anywhere_in_the_room() -> None:
    data = {"band": "data", "family": "cat6", "cores": 8, "via": ("T1",)}
    told = one_way(TRAY, to=position(C, 1000, 1200), **data)
    assert (told.broken, told.forbidden) == ("", ("T1",))
    # 700 up, T1 from 1000 to the corner, clipped along all of B (6 m) and 1000 of C, 1300 down;
    # the other way round it is 1000 in T1 and 6 + 7 m clipped
    assert told.path_m == pytest.approx(0.7 + 7.0 + 6.0 + 1.0 + 1.3)
    clipped = [(leg.wall, leg.length_mm) for leg in told.legs if leg.kind == "clipped"]
    assert clipped == [("B", 6000), ("C", 1000)]
    assert all(leg.enclosure == "clipped" for leg in told.legs if leg.kind == "clipped")


def test_a_run_it_is_told_to_use_is_reached_over_a_door_on_the_way() -> None:
    door = Opening("roller door", "roller door", 2000.0, 3000.0, 0.0, 2600.0)
    told = one_way(
        TRAY, to=position(C, 1000, 1200), via=("T1",), openings={"B": (door,), "D": (door,)}
    )
    # 700 up, 7 m of T1, 200 up to clear the door by 100, 6 + 1 m, 1500 down
    assert told.path_m == pytest.approx(0.7 + 7.0 + 0.2 + 7.0 + 1.5)


def test_a_run_round_the_corner_is_reached_within_three_metres() -> None:
    near = one_way(TRAY, to=position(B, 3000, 1200))
    # 700 up, T1 from 1000 to the corner, clipped 3 m along B at its level, 1300 down
    assert near.path_m == pytest.approx(0.7 + 7.0 + 3.0 + 1.3)
    assert [(leg.kind, leg.wall) for leg in near.legs] == [
        ("drop", "A"), ("containment", "A"), ("clipped", "B"), ("drop", "B")
    ]  # fmt: skip
    assert (near.broken, near.forbidden) == ("", ())
    far = one_way(TRAY, to=position(B, 3001, 1200))
    assert not any(leg.containment for leg in far.legs), "clipped all the way, from side to side"


def test_a_run_round_the_corner_is_reached_whichever_way_the_cable_is_pulled() -> None:
    points = [point("X1", position(B, 2500, 1200)), point("X2", position(D, 5000, 1200))]
    runs = [TRAY]
    lengths = []
    for ends in (("X1", "X2"), ("X2", "X1")):
        job = installation(on=ON, points=points, cables=[cable("W1", *ends)], runs=runs)
        lengths.append(find_paths(job)["W1"].path_m)
    # D 5.0 is 1.0 from A: up 1.3, 1.0, all of A, 2.5, down 1.3
    assert lengths == pytest.approx([1.3 + 1.0 + 8.0 + 2.5 + 1.3] * 2)


def test_a_run_round_the_corner_is_left_alone_when_straight_along_the_wall_is_cheaper() -> None:
    points = [point("X1", position(B, 800, 1200)), point("X2", position(B, 2900, 1200))]
    job = installation(on=ON, points=points, cables=[cable("W1", "X1", "X2")], runs=[TRAY])
    assert find_paths(job)["W1"].path_m == pytest.approx(2.1)


def test_via_takes_the_longer_run() -> None:
    high = run("T2", [(A, 0, 2900), (A, 8000, 2900)], ("A",))
    assert {leg.containment for leg in one_way(TRAY, high, to=position(A, 6000, 1200)).legs} == {
        "",
        "T1",
    }
    told = one_way(TRAY, high, to=position(A, 6000, 1200), via=("T2",))
    assert {leg.containment for leg in told.legs} == {"", "T2"}
    assert told.forbidden == ()


def test_via_a_run_that_is_not_there() -> None:
    assert "T7, which is not there" in one_way(TRAY, to=position(A, 6000, 1200), via=("T7",)).broken


def test_the_crossing_is_used_when_shorter_and_not_when_longer() -> None:
    ring = run(
        "T1",
        [(A, 0, 2500), (B, 0, 2500), (C, 0, 2500), (C, 8000, 2500)],
        ("A", "B", "C"),
    )
    over = run("T2", [(A, 2000, 2500), (C, 6000, 2500)], ("",))
    near = one_way(ring, over, to=position(C, 6500, 1200))  # round: 7 + 6 + 6.5, over: 1 + 6 + 0.5
    assert "T2" in {leg.containment for leg in near.legs}
    assert near.path_m == pytest.approx(0.7 + 1.0 + 6.0 + 0.5 + 1.3)
    far = one_way(ring, over, to=position(B, 3000, 1200))
    assert "T2" not in {leg.containment for leg in far.legs}


def test_clipped_goes_the_shorter_way_round_or_past_a_door_the_longer() -> None:
    to = position(D, 3000, 1200)
    short = one_way(to=to, clipped_up_mm=2000.0)
    # from the top of the board: 200 up, 1000 along A, 3000 along D, 800 down
    assert short.path_m == pytest.approx(0.2 + 1.0 + 3.0 + 0.8)
    door = Opening("door", "side door", 4000.0, 1000.0, 0.0, 2100.0)
    long = one_way(to=to, clipped_up_mm=2000.0, openings={"D": (door,)})
    assert long.path_m == pytest.approx(0.2 + 7.0 + 6.0 + 8.0 + 3.0 + 0.8)
    both = one_way(to=to, clipped_up_mm=2000.0, openings={"D": (door,), "B": (door,)})
    assert "passes the opening side door on wall D at 4 m" in both.broken
    above = one_way(to=to, clipped_up_mm=2200.0, openings={"D": (door,), "B": (door,)})
    assert above.broken == ""


def test_a_thing_at_the_end_of_a_declared_run() -> None:
    duct = declared("U1", place(A, 7000, 300), 40.0)
    end = replace(position(A, 7000, 300), wall="", end_of="U1")
    route = one_way(TRAY, duct, to=end)
    # 700 up, 6000 along, 2200 down, 300 through, 40 m
    assert route.path_m == pytest.approx(0.7 + 6.0 + 2.2 + 0.3 + 40.0)
    assert route.legs[-1].kind == "declared"


def test_no_cable_is_clipped_along_the_edge_of_a_board() -> None:
    riser = run("T2", [(A, 1000, 1800), (A, 1000, 2500)], ("A",))
    route = one_way(TRAY, riser, to=position(A, 2000, 1200))
    # by the foot of the riser it would be 1000 along the top edge of DB1 and 600 down
    assert [(leg.containment, leg.length_mm) for leg in route.legs] == [
        ("T2", 700), ("T1", 1000), ("", 1300)
    ]  # fmt: skip


def test_no_thing_is_joined_directly_round_two_corners_or_to_a_board() -> None:
    near_board = one_way(TRAY, to=position(A, 1500, 1500))
    assert "T1" in {leg.containment for leg in near_board.legs}
    no_run = one_way(to=position(A, 1500, 1500))  # no containment at all: clipped from its side
    assert [(leg.kind, leg.length_mm) for leg in no_run.legs] == [("clipped", 500)]


def test_five_thousand_circuits_all_find_their_way() -> None:
    on, boards, points, cables, runs = {}, [], [], [], []
    for room in range(50):
        names = [f"{letter}{room}" for letter in "ABCD"]
        here = dict(zip(names, walls(room=f"R{room}").values(), strict=True))
        here = {
            name: replace(wall, name=name, next_wall=names[(n + 1) % 4])
            for n, (name, wall) in enumerate(here.items())
        }
        on.update(here)
        first, second, third, _ = (here[name] for name in names)
        corners = [(first, 0, 2500), (second, 0, 2500), (third, 0, 2500), (third, 8000, 2500)]
        runs.append(run(f"T{room}", corners, tuple(names[:3])))
        boards.append(board(position(first, 1000, 1500), f"DB{room}"))
        for n in range(100):
            wall = here[names[n % 3]]
            tag = f"X{room}-{n}"
            points.append(point(tag, position(wall, 500 + 50 * n, 1200)))
            cables.append(cable(f"W{room}-{n}", f"DB{room}", tag))
    job = installation(on=on, boards=boards, points=points, cables=cables, runs=runs)
    found = find_paths(job)
    sections, _ = fill_sections(job, found, {})
    assert len(found) == 5000
    assert not any(route.broken for route in found.values())
    assert sum(len(s.cables) for s in sections.values()) == sum(
        1 for route in found.values() for leg in route.legs if leg.section
    )


@pytest.mark.parametrize("up_mm", [None, 2500.0])
def test_a_cable_passes_beside_a_board_that_stands_in_its_way(up_mm: float | None) -> None:
    """DB2 covers 3800 to 4200 over X1: 50 mm clear of it (common practice), then level to X1.

    By the tray or clipped at its level: 700 up, 1000 to 3750, 1900 down, 250 level.
    """
    job = installation(
        on=ON,
        boards=[DB1, board(position(A, 4000, 1500), "DB2")],
        points=[point("X1", position(A, 4000, 600))],
        cables=[cable("W1", "DB1", "X1", clipped_up_mm=up_mm)],
        runs=[TRAY],
    )
    legs = find_paths(job)["W1"].legs
    assert [round(leg.length_mm) for leg in legs] == [700, 2750, 1900, 250]
    assert legs[2].start == place(A, 3750, 2500)
    assert legs[2].end == place(A, 3750, 600)
