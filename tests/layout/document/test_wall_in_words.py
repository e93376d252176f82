"""Which wall a thing is on, for a visitor: checked against plans drawn by hand, north at the top.

The studio (specs/pottery-studio.yaml): wall A north with the entrance door 0.6 to 1.5 m and a
window 3.0 to 5.4 m, B east, C south with the roller door 2.6 to 5.6 m, D west. Left is west to
whoever faces A, and east to whoever faces C.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from asfitted.geometry import Point3
from asfitted.layout.document.wall_in_words import wall_known_by
from asfitted.resolve.installation import Position

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

    Models = dict[str, Model]


def at(wall: str, along_mm: float, up_mm: float = 1600.0, *, outside: bool = False) -> Position:
    return Position("", wall, along_mm, up_mm, 0.0, outside, Point3(0, 0, 0))


@pytest.mark.parametrize(
    ("place", "words"),
    [
        (at("D", 5400), "on your right as you stand inside and face the roller door"),
        (at("B", 4400), "on your left as you stand inside and face the roller door"),
        (at("A", 300), "on the left of the entrance door"),
        (at("A", 7000), "on the right of the entrance door"),
        (at("A", 300, outside=True), "on the right of the entrance door"),
        (at("A", 1000, 2300), "above the entrance door"),
        (at("C", 7300), "on the right of the roller door"),
        (at("D", 5400, outside=True), ""),
        (at("", 0), ""),
    ],
)
def test_a_wall_is_told_by_what_is_seen_there(
    demo_models: Models, place: Position, words: str
) -> None:
    assert wall_known_by(place, demo_models["pottery-studio"].installation) == words


def test_the_opposite_wall_is_told_where_neither_neighbour_has_an_opening(
    demo_models: Models,
) -> None:
    studio = demo_models["pottery-studio"].installation
    walls = dict(studio.walls)
    walls["C"] = replace(walls["C"], openings=())
    told = replace(studio, walls=walls)
    assert wall_known_by(at("C", 1000), told) == "opposite the entrance door"


def test_openings_of_one_name_in_a_room_tell_nothing(demo_models: Models) -> None:
    """Two doors called "door": a visitor could take one for the other."""
    studio = demo_models["pottery-studio"].installation
    walls = dict(studio.walls)
    door = replace(walls["A"].openings[0], name="door")
    walls["A"] = replace(walls["A"], openings=(door,))
    walls["C"] = replace(walls["C"], openings=(replace(door, from_mm=4000.0),))
    assert wall_known_by(at("D", 5400), replace(studio, walls=walls)) == ""
    assert wall_known_by(at("A", 300), replace(studio, walls=walls)) == ""
