"""Several rooms and storeys: where they lie, which wall is meant, and the passages between them.

Every figure is worked out by hand from the lengths of the walls written in the job.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from small_job import resolved

from asfitted.errors import SpecError
from asfitted.geometry import Point, Point3

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.resolve.installation import Installation

# Hall 6 m by 4 m; Office 5 m by 4 m behind its wall B, 150 mm apart; Loft over the Hall.
BUILDING = """\
asfitted: 1
job: {number: J1, title: Test}
supply: {system: TN-S, phases: 3}
rooms:
  Hall:
    height: 3 m
    north: wall A
    walls: {A: {length: 6 m}, B: {length: 4 m}, C: {length: 6 m}, D: {length: 4 m}}
  Office:
    height: 3 m
    walls: {A: {length: 5 m}, B: {length: 4 m}, C: {length: 5 m}, D: {length: 4 m}}
  Loft:
    storey: First floor
    level: 3.3 m
    height: 2.7 m
    walls: {A: {length: 6 m}, B: {length: 4 m}, C: {length: 6 m}, D: {length: 4 m}}
passages:
  P1: {through: wall, from: "Hall wall B, 1.0 m along, 2.5 m up",
       to: "Office wall A, 2.0 m along, 2.5 m up", thickness: 150 mm, size: 200 x 100, for: power,
       fire resistance: 60 min, fire-stopping: yes}
  P2: {through: floor, from: "Hall wall C, 2.0 m along, 2.8 m up",
       to: "Loft wall C, 2.0 m along, 0.2 m up", thickness: 300 mm}
boards:
  DB1: {at: "Hall wall A, 1.0 m along, 1.5 m up", ways: 4, phases: 3, fed from: supply}
"""


@pytest.fixture
def building(tmp_path: Path) -> Installation:
    return resolved(tmp_path, BUILDING)


def told(tmp_path: Path, before: str, after: str) -> str:
    assert before in BUILDING
    with pytest.raises(SpecError) as caught:
        resolved(tmp_path, BUILDING.replace(before, after, 1))
    return str(caught.value)


def test_walls_of_one_letter_are_named_with_their_room(building: Installation) -> None:
    assert list(building.walls)[3:6] == ["Hall D", "Office A", "Office B"]
    assert building.walls["Office A"].letter == "A"
    assert building.walls["Office D"].next_wall == "Office A"
    assert building.rooms["Office"].walls == ("Office A", "Office B", "Office C", "Office D")


def test_letters_that_are_all_different_stay_names(tmp_path: Path) -> None:
    plain = BUILDING.replace(
        "walls: {A: {length: 5 m}, B: {length: 4 m}, C: {length: 5 m}, D: {length: 4 m}}",
        "walls: {E: {length: 5 m}, F: {length: 4 m}, G: {length: 5 m}, H: {length: 4 m}}",
    )
    start, end = plain.index("  Loft:"), plain.index("passages:")
    first, last = plain.index("passages:"), plain.index("boards:")
    job = resolved(tmp_path, plain[:start] + plain[end:first] + plain[last:])
    assert list(job.walls) == list("ABCDEFGH")


def test_a_wall_passage_sets_rooms_back_to_back(building: Installation) -> None:
    # 1.0 m down Hall B is (6000, -1000). Office A looks the other way: it runs north, 150 mm east,
    # and its 2.0 m mark lies there, so that it starts at y = -1000 - 2000 and ends at +2000.
    wall = building.walls["Office A"]
    assert (wall.start, wall.direction, wall.inward) == (Point(6150, -3000), (0, 1), (1, 0))
    assert building.walls["Office B"].start == Point(6150, 2000)
    assert building.walls["Office C"].start == Point(10150, 2000)
    assert building.rooms["Office"].is_placed


def test_north_follows_from_the_room_that_names_it(building: Installation) -> None:
    # Office B runs along the top of the Office, from west to east, as Hall A does
    assert building.rooms["Office"].north_wall == "Office B"
    assert building.rooms["Loft"].north_wall == "Loft A"


def test_a_floor_passage_sets_rooms_one_above_the_other(building: Installation) -> None:
    loft = building.rooms["Loft"]
    assert (loft.storey, loft.level_mm) == ("First floor", 3300)
    assert building.rooms["Hall"].storey == "Ground floor"
    below, above = building.walls["Hall A"].start, building.walls["Loft A"].start
    assert above == Point(below.x + loft.storey_east_mm, below.y)
    # in the frame of the drawings nothing of one storey lies over the other
    assert loft.storey_east_mm > max(w.start.x for w in building.walls.values() if w.room != "Loft")


def test_lengths_of_passages(building: Installation) -> None:
    # through the wall: its thickness; through the floor: 3300 + 200 - 2800
    assert building.passages["P1"].length_mm == 150
    assert building.passages["P2"].length_mm == 700
    assert building.passages["P1"].start.at == Point3(6000, -1000, 2500)
    assert building.passages["P1"].end.at == Point3(6150, -1000, 2500)


def test_what_is_known_of_a_passage(building: Installation) -> None:
    one, two = building.passages["P1"], building.passages["P2"]
    assert (one.width_mm, one.height_mm, one.bands) == (200, 100, ("power",))
    assert (one.fire_resistance_min, one.fire_stopping) == (60, "yes")
    assert (two.width_mm, two.bands) == (None, ("power", "data"))
    assert (two.fire_resistance_min, two.fire_stopping) == (None, "not recorded")
    assert {d.what for d in building.defaults if d.subject == "P2"} == {
        "size",
        "fire resistance of what is passed",
        "fire-stopping",
    }


def test_a_second_passage_must_fit_the_first(tmp_path: Path) -> None:
    # 3.0 m down Hall B is y = -3000, where Office A has its 0 mark: 0.4 m along is 400 mm off
    second = (
        '  P3: {through: wall, from: "Hall wall B, 3.0 m along, 2.5 m up", '
        'to: "Office wall A, 0.4 m along, 2.5 m up", thickness: 150 mm}\nboards:'
    )
    text = told(tmp_path, "boards:", second)
    assert "SP-13  job.yaml:23:3" in text
    assert "its two ends lie 400 mm apart on plan" in text
    near = second.replace("0.4 m along", "0.1 m along")
    assert resolved(tmp_path, BUILDING.replace("boards:", near, 1)).passages["P3"].length_mm == 150


def test_a_wall_of_unknown_thickness_is_taken_as_300_and_says_so(tmp_path: Path) -> None:
    job = resolved(tmp_path, BUILDING.replace("thickness: 150 mm, ", "", 1))
    assert job.passages["P1"].length_mm == 300
    assert job.walls["Office A"].start.x == 6300
    assert ("P1", "thickness", "300 mm") in {(d.subject, d.what, d.value) for d in job.defaults}


def test_a_room_may_be_placed_on_plan(tmp_path: Path) -> None:
    start, end = BUILDING.index("passages:"), BUILDING.index("boards:")
    text = BUILDING[:start] + BUILDING[end:]
    placed = text.replace("  Office:\n", "  Office:\n    on plan: 6.15 m right, 1.0 m down\n", 1)
    job = resolved(tmp_path, placed)
    assert job.walls["Office A"].start == Point(6150, -1000)
    assert job.rooms["Office"].is_placed
    assert not job.rooms["Loft"].is_placed


def test_rooms_that_nothing_joins_stand_side_by_side(tmp_path: Path) -> None:
    start, end = BUILDING.index("passages:"), BUILDING.index("boards:")
    job = resolved(tmp_path, BUILDING[:start] + BUILDING[end:])
    assert job.walls["Office A"].start == Point(6000 + 3000, 0)
    assert [d.subject for d in job.defaults if d.what == "place on plan"] == ["Office"]


def test_a_raised_floor_on_one_storey(tmp_path: Path) -> None:
    # a stage 0.9 m up: a hole 2.5 m above the hall is 1.6 m above the stage
    text = BUILDING.replace("  Hall:\n", "  Hall:\n    storey: Ground floor\n", 1)
    text = text.replace("  Office:\n", "  Office:\n    storey: Ground floor\n    level: 0.9 m\n", 1)
    text = text.replace("2.0 m along, 2.5 m up", "2.0 m along, 1.6 m up", 1)
    job = resolved(tmp_path, text)
    assert [room.level_mm for room in job.rooms.values()] == [0, 900, 3300]
    assert job.rooms["Office"].storey_east_mm == 0
    assert job.passages["P1"].length_mm == 150


@pytest.mark.parametrize(
    ("before", "after", "says"),
    [
        ("Hall wall A, 1.0", "wall A, 1.0", 'wall "A" is not clear: 3 rooms have one'),
        ("Hall wall A, 1.0", "Hal wall A, 1.0", 'did you mean "Hall"?'),
        ("Hall wall A, 1.0", "Hall wall K, 1.0", 'wall of Hall "K" is not in this job'),
        ("Hall wall B, 1.0", "Hall wall B outside, 1.0", "an end is on the inner face of a wall"),
        ('to: "Office wall A, 2.0', 'to: "Hall wall D, 2.0', "P1 starts and ends in Hall"),
        ("2.0 m along, 2.5 m up", "2.0 m along, 2.4 m up", "lies -100 mm from the height"),
        ("    level: 3.3 m\n", "", "does not say how high its floor is"),
        ("    storey: First floor\n    level: 3.3 m\n", "", "are both at 0 mm"),
        ("Loft wall C, 2.0 m along, 0.2 m up", "Loft wall C, 2.0 m along, 0 m up", ""),
        ("level: 3.3 m", "level: 2.8 m", "its ends lie 200 mm one above the other"),
        ("through: floor", "through: ceiling", "ceiling"),
        ("fire-stopping: yes", "fire-stopping: maybe", 'write "yes", "no" or "not recorded"'),
        ("60 min", "60 m", "60 min"),
        ("    height: 2.7 m\n", "    on plan: 2 m away\n    height: 2.7 m\n", "4.2 m right"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_told(tmp_path: Path, before: str, after: str, says: str) -> None:
    if not says:  # the floor is then exactly as thick as its ends lie apart: that is right
        job = resolved(tmp_path, BUILDING.replace(before, after, 1))
        assert job.passages["P2"].length_mm == 500
        return
    assert says in told(tmp_path, before, after)


def test_norths_that_contradict_each_other_are_told(tmp_path: Path) -> None:
    text = told(tmp_path, "  Office:\n", "  Office:\n    north: wall A\n")
    assert "north of Office is not that of Hall" in text


def test_a_run_names_its_room_once(tmp_path: Path) -> None:
    tray = (
        "containment:\n  T1: {is: perforated tray, size: 150 x 25, for: power, level: 2.5 m, "
        "run: [Office wall A 2.0 m, B 1.0 m]}\nboards:"
    )
    run = resolved(tmp_path, BUILDING.replace("boards:", tray, 1)).containment["T1"]
    assert run.path == (
        Point3(6150, -1000, 2500),
        Point3(6150, 2000, 2500),
        Point3(7150, 2000, 2500),
    )
    assert run.walls == ("Office A", "Office B")


def test_a_run_stays_in_one_room(tmp_path: Path) -> None:
    tray = (
        "containment:\n  T1: {is: perforated tray, size: 150 x 25, for: power, level: 2.5 m, "
        "run: [Hall wall A 2.0 m, over to Office wall B 1.0 m]}\nboards:"
    )
    text = told(tmp_path, "boards:", tray)
    assert "goes from room to room; write one run in each" in text
    assert 'under "passages" the hole that joins them' in text
