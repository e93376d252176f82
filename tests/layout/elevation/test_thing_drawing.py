"""Words inside a thing stay readable: no hatching and no boundary of a detail runs through them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from asfitted.dev.ink_on_texts import ink_on_texts
from asfitted.geometry import Box, Point
from asfitted.layout.drawing import Drawing
from asfitted.layout.elevation.key_inset import ShownWall, key_inset
from asfitted.layout.elevation.thing_drawing import draw_things
from asfitted.layout.elevation.things_on_wall import Thing
from asfitted.layout.elevation.wall_view import WallPoint, WallView
from asfitted.layout.free_room import FreeRoom
from asfitted.layout.linework import rectangle
from asfitted.layout.sheet_layout import Item, Text
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model


def _heater(state: State) -> Thing:
    place = WallPoint(1500.0, 1200.0, 0.0)
    lines = ("C/L +1200", state.value)
    return Thing(
        "H98",
        "point",
        "heater",
        place,
        800.0,
        900.0,
        state,
        is_outside=False,
        lines=lines,
        symbol="",
    )


@pytest.fixture(name="view")
def wall_view(demo_models: dict[str, Model]) -> WallView:
    wall = next(iter(demo_models["pottery-studio"].installation.walls.values()))
    return WallView(wall, 20, 30.0, 200.0)


def _drawn(view: WallView, thing: Thing, boundaries: tuple[Box, ...] = ()) -> tuple[Item, ...]:
    drawing = Drawing(FreeRoom(Box(0.0, 0.0, 400.0, 250.0)))
    draw_things(drawing, view, [thing], {}, {}, boundaries=boundaries)
    lines = [rectangle(box, width_mm=0.25) for box in boundaries]
    return (*drawing.items, Item("boundary", "outline", tuple(lines)))


def _words(items: tuple[Item, ...]) -> list[str]:
    return [part.text for item in items for part in item.parts if isinstance(part, Text)]


def test_words_in_a_thing_to_be_removed_are_clear_of_its_hatching(view: WallView) -> None:
    items = _drawn(view, _heater(State.REMOVED))
    assert "H98" in _words(items)
    assert ink_on_texts(items) == []


def test_words_wait_where_the_boundary_of_a_detail_would_cut_them(view: WallView) -> None:
    thing = _heater(State.NEW)
    middle = view.x(thing.at.along)
    cutting = Box(middle, 0.0, middle + 60.0, 240.0)
    around = Box(middle - 60.0, 0.0, middle + 60.0, 240.0)
    assert _words(_drawn(view, thing, (cutting,))) == []
    assert "H98" in _words(_drawn(view, thing, (around,)))


@pytest.mark.parametrize("face", ["inside", "outside"])
def test_arrows_of_a_key_plan_are_clear_of_its_words(
    demo_models: dict[str, Model], face: str
) -> None:
    installation = demo_models["community-shed"].installation
    for room in installation.rooms.values():
        for name in room.walls:
            wall = installation.walls[name]
            shown = ShownWall(wall, 0.0, wall.length_mm, face)
            assert ink_on_texts(key_inset(installation, room, [shown], Point(20.0, 20.0))) == [], (
                name
            )
