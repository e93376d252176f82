from __future__ import annotations

from asfitted.geometry import Box, Point
from asfitted.layout.free_room import FreeRoom, line_meets_box, lines_cross

ROOM = Box(0, 0, 100, 100)
NOWHERE = Box(-9, -9, -8, -8)


def test_a_box_is_free_only_inside_the_limits_and_clear_of_ink() -> None:
    room = FreeRoom(ROOM)
    room.take_ink(Box(40, 40, 60, 60))
    assert room.is_free(Box(10, 10, 20, 20))
    assert not room.is_free(Box(95, 10, 105, 20))
    assert not room.is_free(Box(55, 55, 70, 70))
    assert not room.is_free(Box(60.5, 40, 70, 60))  # nearer than 0.7 mm


def test_an_oblique_line_takes_its_own_path_only() -> None:
    room = FreeRoom(ROOM)
    room.take_line(Point(0, 0), Point(100, 100))
    assert room.is_free(Box(60, 10, 80, 20))
    assert not room.is_free(Box(48, 48, 52, 52))


def test_a_leader_may_cross_ink_but_neither_words_nor_leaders() -> None:
    room = FreeRoom(ROOM)
    room.take_ink(Box(10, 48, 12, 52))
    assert room.leader_cost(Point(5, 50), Point(20, 50), NOWHERE) == 1
    room.take_solid(Box(30, 45, 40, 55))
    assert room.leader_cost(Point(25, 50), Point(50, 50), NOWHERE) is None
    assert room.leader_cost(Point(41, 50), Point(50, 50), Box(30, 45, 40, 55)) == 0
    room.take_leader(Point(60, 0), Point(60, 100))
    assert room.leader_cost(Point(50, 80), Point(70, 80), NOWHERE) is None
    assert not room.is_free(Box(58, 20, 62, 24))


def test_lines_and_boxes() -> None:
    box = Box(10, 10, 20, 20)
    assert line_meets_box(Point(0, 15), Point(30, 15), box)
    assert not line_meets_box(Point(0, 5), Point(30, 5), box)
    assert not line_meets_box(Point(0, 15), Point(9, 15), box)
    assert lines_cross(Point(0, 0), Point(10, 10), Point(0, 10), Point(10, 0))
    assert not lines_cross(Point(0, 0), Point(1, 1), Point(0, 10), Point(10, 0))
