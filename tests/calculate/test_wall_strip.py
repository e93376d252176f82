"""Square ways along walls, round doors and windows."""

from __future__ import annotations

from small_room import walls

from asfitted.calculate.routes.wall_strip import Flat, Strip, flat_length, neighbours, ways_round
from asfitted.resolve.installation import Opening, Room

WINDOW = Opening("window", "window", 3000.0, 2000.0, 1000.0, 1200.0)  # 3-5 m along, 1.0-2.2 m up
ON = walls({"A": (WINDOW,)})
A, B, D = ON["A"], ON["B"], ON["D"]
ALONE = Strip((A,))


def test_upright_first_then_level() -> None:
    path = ALONE.square_path(Flat(1000, 500), Flat(2000, 2500))
    assert path == [Flat(1000, 500), Flat(1000, 2500), Flat(2000, 2500)]


def test_a_drop_under_a_window_goes_beside_its_frame() -> None:
    path = ALONE.square_path(Flat(3500, 500), Flat(3500, 2500))
    # 600 mm to the left (500 to the edge, 100 clear), up 2000, 600 back
    assert path is not None
    assert flat_length(path) == 600 + 2000 + 600
    assert ALONE.is_clear(path)


def test_along_the_very_edge_of_an_opening_is_clear() -> None:
    assert ALONE.crossed(Flat(5000, 500), Flat(5000, 2500)) is None
    assert ALONE.crossed(Flat(4990, 500), Flat(4990, 2500)) == (A, WINDOW)


def test_a_door_to_the_floor_and_ceiling_blocks_every_way() -> None:
    full = Opening("opening", "opening", 3000.0, 2000.0, 0.0, 3000.0)
    strip = Strip((walls({"A": (full,)})["A"],))
    assert strip.square_path(Flat(1000, 500), Flat(7000, 500)) is None


def test_a_way_round_the_corner_is_cut_at_the_corner() -> None:
    strip = neighbours(B, A)  # B follows A, so A is on the left
    assert strip is not None
    assert strip.walls == (A, B)
    pieces = list(strip.pieces([Flat(9000, 1000), Flat(7000, 1000)]))
    assert [(p.wall.name, p.along0, p.along1) for p in pieces] == [
        ("B", 1000, 0),
        ("A", 8000, 7000),
    ]


def test_opposite_walls_are_no_neighbours() -> None:
    assert neighbours(A, ON["C"]) is None


def test_both_ways_round_a_room() -> None:
    room = Room("Room", 3000.0, "", "", ("A", "B", "C", "D"))
    (clockwise, left), (other, right) = ways_round(room, ON, A, D)
    assert ["".join(w.name for w in strip.walls) for strip in (clockwise, other)] == ["ABCD", "DA"]
    assert (left, right) == (True, False)
