"""Rooms, positions and runs against figures worked out by hand."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from small_job import HEAD, SPECS, resolved

from asfitted.errors import SpecError
from asfitted.geometry import Point, Point3, distance3
from asfitted.resolve import resolve
from asfitted.spec import load_job

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.resolve.installation import Installation


@pytest.fixture(scope="module")
def studio() -> Installation:
    return resolve(load_job(SPECS / "pottery-studio.yaml"))


def test_walls_go_clockwise_with_the_room_on_the_right(studio: Installation) -> None:
    walls = studio.walls
    assert [walls[n].start for n in "ABCD"] == [
        Point(0, 0),
        Point(8000, 0),
        Point(8000, -6400),
        Point(0, -6400),
    ]
    assert [walls[n].inward for n in "ABCD"] == [(0, -1), (-1, 0), (0, 1), (1, 0)]
    assert [walls[n].next_wall for n in "ABCD"] == ["B", "C", "D", "A"]


def test_positions_are_placed_in_the_building(studio: Installation) -> None:
    assert studio.points["X1"].position.at == Point3(8000, -1000, 1300)
    assert studio.boards["DB1"].position.at == Point3(0, -1000, 1600)
    assert studio.points["L3"].position.at == Point3(6000, -4800, 3500)
    assert studio.points["Q1"].position.at == Point3(5600, -6400, 1500)
    floodlight = studio.points["FL1"].position
    assert floodlight.outside
    assert floodlight.at == Point3(7500, 0, 3200)


def test_end_of_a_declared_run(studio: Installation) -> None:
    camera = studio.position_of("CAM4")
    assert (camera.wall, camera.end_of, camera.words) == ("", "U1", "post at the yard gate")
    duct = studio.containment["U1"]
    assert (duct.declared_length_m, duct.depth_mm, duct.walls) == (58, 500, ())


def test_a_run_turns_the_corners(studio: Installation) -> None:
    tray = studio.containment["T1"]
    assert tray.path == (
        Point3(0, -5400, 2900),
        Point3(0, 0, 2900),
        Point3(8000, 0, 2900),
        Point3(8000, -5600, 2900),
    )
    assert tray.walls == ("D", "A", "B")
    assert sum(map(distance3, tray.path, tray.path[1:])) == 5400 + 8000 + 5600


def test_a_run_crosses_overhead_and_another_goes_round_the_walls(studio: Installation) -> None:
    tray = studio.containment["T2"]
    assert tray.path == (Point3(5600, 0, 2900), Point3(5600, -6400, 2900))
    assert tray.walls == ("",)
    basket = studio.containment["T3"]
    assert basket.walls == ("C", "D", "A", "B")
    assert sum(map(distance3, basket.path, basket.path[1:])) == 1400 + 6400 + 8000 + 6100


def run_job(tmp_path: Path, run: str) -> Installation:
    tray = f"  T1: {{is: wire basket, size: 100 x 55, for: data, level: 2.5 m, run: [{run}]}}\n"
    return resolved(tmp_path, HEAD + "containment:\n" + tray)


def test_a_run_anticlockwise_round_a_corner(tmp_path: Path) -> None:
    run = run_job(tmp_path, "B 1.0 m, A 5.0 m").containment["T1"]
    assert run.path == (Point3(6000, -1000, 2500), Point3(6000, 0, 2500), Point3(5000, 0, 2500))
    assert run.walls == ("B", "A")


def test_a_run_from_a_whole_first_wall(tmp_path: Path) -> None:
    clockwise = run_job(tmp_path, "A, B 1.0 m").containment["T1"]
    assert clockwise.path[0] == Point3(0, 0, 2500)
    other_way = run_job(tmp_path, "A, D 3.0 m").containment["T1"]
    assert other_way.path[0] == Point3(6000, 0, 2500)
    assert other_way.walls == ("A", "D")


def test_a_riser_goes_to_its_own_height(tmp_path: Path) -> None:
    run = run_job(tmp_path, "A 1.0 m at 1.2 m up, A 3.0 m, A 3.0 m at 0.3 m up").containment["T1"]
    assert run.path == (
        Point3(1000, 0, 1200),
        Point3(1000, 0, 2500),
        Point3(3000, 0, 2500),
        Point3(3000, 0, 300),
    )
    assert run.walls == ("A", "A", "A")


def test_a_run_below_its_level_keeps_its_height(tmp_path: Path) -> None:
    run = run_job(tmp_path, "A 1.0 m at 0.3 m up, A 3.0 m at 0.3 m up").containment["T1"]
    assert run.path == (Point3(1000, 0, 300), Point3(3000, 0, 300))


def test_a_bare_level_gets_its_face_and_says_so(tmp_path: Path) -> None:
    job = run_job(tmp_path, "A 1.0 m, A 3.0 m")
    assert job.containment["T1"].level_of == "T/O"
    assert [d.value for d in job.defaults if d.what == "level is to"] == ["T/O"]


@pytest.mark.parametrize(
    "run",
    [
        "A 1.0 m",
        "A 1.0 m, A",
        "A 1.0 m, C 1.0 m",
        "A, A 1.0 m",
        "A 7.0 m, B",
        "A 1.0 m at 4 m up, B",
    ],
)
def test_runs_that_cannot_be_followed(tmp_path: Path, run: str) -> None:
    with pytest.raises(SpecError, match=r"SP-1[47]  job\.yaml:11"):
        run_job(tmp_path, run)


L_ROOM = """\
asfitted: 1
job: {number: J1, title: Test}
rooms:
  Bay:
    height: 3 m
    north: wall A
    walls:
      A: {length: 6 m}
      B: {length: 2 m}
      C: {length: 4 m, turn: left}
      D: {length: 3 m}
      E: {length: 2 m}
      F: {length: 5 m}
"""


def test_an_outer_corner_turns_left(tmp_path: Path) -> None:
    walls = resolved(tmp_path, L_ROOM).walls
    assert [walls[n].start for n in "ABCDEF"] == [
        (0, 0),
        (6000, 0),
        (6000, -2000),
        (2000, -2000),
        (2000, -5000),
        (0, -5000),
    ]
    assert walls["D"].inward == (-1, 0)


def test_walls_may_miss_by_ten_millimetres_and_no_more(tmp_path: Path) -> None:
    assert resolved(tmp_path, L_ROOM.replace("F: {length: 5 m}", "F: {length: 5010}"))
    with pytest.raises(SpecError, match=r"do not close: the last one ends 11 mm"):
        resolved(tmp_path, L_ROOM.replace("F: {length: 5 m}", "F: {length: 5011}"))


def test_walls_that_close_without_a_corner_are_told(tmp_path: Path) -> None:
    text = L_ROOM.replace("F: {length: 5 m}", "F: {length: 5 m, turn: left}")
    with pytest.raises(SpecError, match="not with a corner"):
        resolved(tmp_path, text)


def test_a_second_room_stands_beside_the_first_and_says_so(tmp_path: Path) -> None:
    second = (
        "  Store:\n    height: 3 m\n    walls: "
        "{P: {length: 2 m}, Q: {length: 2 m}, R: {length: 2 m}, S: {length: 2 m}}\n"
    )
    job = resolved(tmp_path, L_ROOM + second)
    assert job.walls["P"].start == Point(9000, 0)
    assert [d.subject for d in job.defaults if d.what == "place on plan"] == ["Store"]


def test_north_that_is_not_given_stays_open(tmp_path: Path) -> None:
    job = resolved(tmp_path, HEAD)
    assert job.rooms["Hall"].north_wall == ""
    assert ("Hall", "north") in {(d.subject, d.what) for d in job.defaults}


def test_a_run_crosses_overhead_and_goes_on_anticlockwise(tmp_path: Path) -> None:
    run = run_job(tmp_path, "A 4.0 m, over to C 2.0 m, C 0.6 m").containment["T1"]
    assert run.walls == ("", "C")
    assert [point.x for point in run.path] == [4000, 4000, 5400]
