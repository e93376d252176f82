"""Rooms before walls, places on plan, fire resistance and fire-stopping, as written."""

from __future__ import annotations

import pytest

from asfitted.errors import NotUnderstoodError
from asfitted.spec.building_words import (
    PlanPlaceWords,
    parse_fire_resistance,
    parse_fire_stopping,
    parse_plan_place,
)
from asfitted.spec.words import parse_position, parse_waypoint


@pytest.mark.parametrize(
    ("text", "room", "wall"),
    [
        ("wall B, 1.0 m along", "", "B"),
        ("Hall wall B, 1.0 m along", "Hall", "B"),
        ("Plant room wall C2 outside, 1.0 m along", "Plant room", "C2"),
    ],
)
def test_a_room_may_stand_before_the_wall(text: str, room: str, wall: str) -> None:
    read = parse_position(text)
    assert (read.room, read.wall) == (room, wall)
    assert read.outside is ("outside" in text)


@pytest.mark.parametrize(
    ("text", "room", "wall", "along_mm", "over"),
    [
        ("Hall wall D 1.0 m", "Hall", "D", 1000, False),
        ("Plant room wall D", "Plant room", "D", None, False),
        ("over to Hall wall C 2.0 m", "Hall", "C", 2000, True),
        ("wall D 1.0 m", "", "D", 1000, False),
    ],
)
def test_waypoints_with_a_room(
    text: str, room: str, wall: str, along_mm: float | None, over: bool
) -> None:
    read = parse_waypoint(text)
    assert (read.room, read.wall, read.along_mm, read.over) == (room, wall, along_mm, over)


def test_a_room_without_the_word_wall_is_not_understood() -> None:
    with pytest.raises(NotUnderstoodError):
        parse_waypoint("Hall D 1.0 m")
    with pytest.raises(NotUnderstoodError):
        parse_position("Hall D, 1.0 m along")


@pytest.mark.parametrize(
    ("text", "right_mm", "down_mm"),
    [
        ("4.2 m right, 3.0 m down", 4200, 3000),
        ("4.2 m left", -4200, 0),
        ("1 m up, 2 m right", 2000, -1000),
    ],
)
def test_places_on_plan(text: str, right_mm: float, down_mm: float) -> None:
    assert parse_plan_place(text) == PlanPlaceWords(text, right_mm, down_mm)


@pytest.mark.parametrize("text", ["4.2 m", "1 m right, 2 m left", "1 m east", "two m right"])
def test_places_on_plan_that_are_not_understood(text: str) -> None:
    with pytest.raises(NotUnderstoodError):
        parse_plan_place(text)


@pytest.mark.parametrize(
    ("text", "minutes"), [("60 min", 60), ("1 h", 60), ("none", 0), ("not recorded", None)]
)
def test_fire_resistance(text: str, minutes: float | None) -> None:
    assert parse_fire_resistance(text) == minutes


@pytest.mark.parametrize(
    ("text", "word"), [("yes", "yes"), ("No", "no"), ("not recorded", "not recorded")]
)
def test_fire_stopping(text: str, word: str) -> None:
    assert parse_fire_stopping(text) == word


@pytest.mark.parametrize("text", ["maybe", "done", ""])
def test_fire_stopping_that_is_not_understood(text: str) -> None:
    with pytest.raises(NotUnderstoodError, match="fire-stopping"):
        parse_fire_stopping(text)
