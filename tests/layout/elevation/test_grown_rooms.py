"""Elevations of rooms grown from a seed: nothing overlaps, nothing falls off."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

import pytest
from grown_rooms import grown_model, numbers_for

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box
from asfitted.layout.elevation.dimension_chain import chain_parts
from asfitted.layout.elevation.wall_content import walls_with_content
from asfitted.layout.elevation.wall_drawing import marks_on
from asfitted.layout.frame import usable_box
from asfitted.layout.sheet_layout import Circle, Item, Path, SymbolUse, Text, text_box
from asfitted.layout.title_block import title_block_box
from asfitted.sheets import elevations

if TYPE_CHECKING:
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.sheet_model import Model

ROOMS = {
    "shed": (1, 5.0, 4.0, 6),
    "cupboard": (2, 2.0, 1.5, 3),
    "studio": (3, 8.0, 6.4, 20),
    "crowded": (4, 9.0, 6.0, 36),
    "hall": (5, 30.0, 12.0, 24),
}


@pytest.fixture(scope="session")
def grown(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Model]:
    folder = tmp_path_factory.mktemp("grown")
    return {
        name: grown_model(folder, seed, long_m=a, wide_m=b, sockets=n)
        for name, (seed, a, b, n) in ROOMS.items()
    }


_SHEETS: dict[str, dict[str, tuple[Item, ...]]] = {}


def sheets(grown: dict[str, Model], room: str) -> dict[str, tuple[Item, ...]]:
    """Return the items of every elevation sheet by its key."""
    if room not in _SHEETS:
        model = grown[room]
        plans = elevations.plan(model)
        numbers = numbers_for(plans)
        _SHEETS[room] = {p.key: elevations.build(p, model, numbers).items for p in plans}
    return _SHEETS[room]


def views_of(model: Model) -> list[WallContent]:
    """Return what every view of the elevations shows."""
    payloads = (p.payload for p in elevations.plan(model))
    return [
        view.content
        for payload in payloads
        if isinstance(payload, elevations.WallPayload)
        for view in payload.sheet.views
    ]


def words(items: tuple[Item, ...]) -> list[tuple[Box, str]]:
    return [
        (text_box(t, text_width_mm(t.text, t.cap_mm, bold=t.bold)), f"{item.ident}: {t.text}")
        for item in items
        for t in item.parts
        if isinstance(t, Text)
    ]


def ink(items: tuple[Item, ...]) -> list[tuple[Box, str]]:
    found = []
    for item in items:
        for part in item.parts:
            if isinstance(part, Path):
                xs, ys = [p.x for p in part.points], [p.y for p in part.points]
                found.append((Box(min(xs), min(ys), max(xs), max(ys)), item.ident))
            elif isinstance(part, Circle):
                c, r = part.centre, part.radius_mm
                found.append((Box(c.x - r, c.y - r, c.x + r, c.y + r), item.ident))
            elif isinstance(part, SymbolUse):
                x, y, s = part.at.x, part.at.y, part.size_mm
                found.append((Box(x, y, x + s, y + s), item.ident))
    return found


@cache
def allowed() -> tuple[Box, Box]:
    return usable_box("A3").grown(0.3), title_block_box("A3").grown(2.9)


@pytest.mark.parametrize("room", ROOMS)
def test_no_words_stand_on_others(grown: dict[str, Model], room: str) -> None:
    for key, items in sheets(grown, room).items():
        boxes = words(items)
        for i, (one, name) in enumerate(boxes):
            clash = [n for other, n in boxes[i + 1 :] if one.grown(-0.05).meets(other)]
            assert not clash, f"{key}: {name} meets {clash}"


@pytest.mark.parametrize("room", ROOMS)
def test_everything_stays_on_its_sheet_and_off_the_title_block(
    grown: dict[str, Model], room: str
) -> None:
    usable, block = allowed()
    for key, items in sheets(grown, room).items():
        for box, name in [*words(items), *ink(items)]:
            assert usable.holds(box), f"{key}: {name} leaves the sheet"
            assert not block.meets(box), f"{key}: {name} is on the title block"


@pytest.mark.parametrize("room", ROOMS)
def test_idents_are_unique(grown: dict[str, Model], room: str) -> None:
    for key, items in sheets(grown, room).items():
        idents = [item.ident for item in items]
        assert len(idents) == len(set(idents)), key


@pytest.mark.parametrize("room", ROOMS)
def test_chains_sum_to_the_wall(grown: dict[str, Model], room: str) -> None:
    model = grown[room]
    for content in walls_with_content(model.installation, model.results):
        parts = chain_parts(marks_on(content))
        assert sum(parts) == round(content.wall.length_mm)
        assert all(part > 0 for part in parts)


@pytest.mark.parametrize("room", ROOMS)
def test_every_socket_is_named_with_its_height(grown: dict[str, Model], room: str) -> None:
    made = sheets(grown, room)
    said = " ".join(name for items in made.values() for _, name in words(items))
    for tag, point in grown[room].installation.points.items():
        assert tag in said.replace(".", " ").replace(";", " ").split(), tag
        assert f"{point.position.up_mm:+.0f}" in said


@pytest.mark.parametrize("room", ROOMS)
def test_all_walls_are_at_one_scale(grown: dict[str, Model], room: str) -> None:
    plans = elevations.plan(grown[room])
    walls = [p.payload for p in plans if isinstance(p.payload, elevations.WallPayload)]
    scales = {wall.scale for wall in walls if not wall.sheet.is_details}
    assert len(scales) == 1


@pytest.mark.parametrize("room", ROOMS)
def test_every_thing_is_in_one_view_and_at_most_one_detail(
    grown: dict[str, Model], room: str
) -> None:
    model = grown[room]
    shown = views_of(model)
    for tag in model.installation.points:
        whole = [c.key for c in shown if not c.detail and any(t.tag == tag for t in c.things)]
        enlarged = [c.key for c in shown if c.detail and any(t.tag == tag for t in c.things)]
        assert len(whole) == 1, (tag, whole)
        assert len(enlarged) <= 1, (tag, enlarged)
