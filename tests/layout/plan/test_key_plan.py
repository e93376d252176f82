from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import pytest

from asfitted.geometry import Box
from asfitted.layout.free_room import gap_mm
from asfitted.layout.lettering import box_of
from asfitted.layout.plan.north import north_direction
from asfitted.layout.plan.plan_set import plan_set
from asfitted.layout.plan.plan_things import (
    look_direction,
    plan_things,
    size_of,
    things_off_plan,
)
from asfitted.layout.plan.plan_view import choose_view
from asfitted.layout.sheet_layout import Circle, Path, SymbolUse, Text
from asfitted.layout.sheet_model import Numbers
from asfitted.sheets import elevations, key_plan

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model

JOBS = ("pottery-studio", "community-shed", "shop-cctv")


def numbers_of(model: Model) -> Numbers:
    plans = [*key_plan.plan(model), *elevations.plan(model)]
    return Numbers({p.key: f"{i:02d}" for i, p in enumerate(plans, start=1)})


@dataclass(frozen=True)
class KeyPlan:
    items: tuple[Item, ...]
    unplaced: tuple[str, ...]


def laid_out(model: Model) -> KeyPlan:
    plans = plan_set(model)
    assert plans.is_one
    made = plans.laid_out(model, plans.parts[0])
    return KeyPlan(made.finished(numbers_of(model)), made.unplaced)


def said(plan: KeyPlan) -> dict[str, list[str]]:
    return {item.ident: [t.text for t in item.parts if isinstance(t, Text)] for item in plan.items}


@pytest.mark.parametrize("job", JOBS)
def test_every_wall_has_a_mark_with_its_sheet(demo_models: dict[str, Model], job: str) -> None:
    model = demo_models[job]
    numbers = numbers_of(model)
    words = said(laid_out(model))
    for name in model.installation.walls:
        sheet = numbers.by_key.get(f"elevation/{name}", "–")
        assert words[f"wall-mark:{name}:words"] == [name, sheet]


@pytest.mark.parametrize("job", JOBS)
def test_every_thing_with_a_place_is_drawn_and_tagged_once(
    demo_models: dict[str, Model], job: str
) -> None:
    model = demo_models[job]
    plan = laid_out(model)
    assert plan.unplaced == ()
    idents = [item.ident for item in plan.items]
    for thing in plan_things(model.installation, model.symbols):
        assert idents.count(f"plan-thing:{thing.tag}") == 1
        assert idents.count(f"plan-tag:{thing.tag}") == 1


@pytest.mark.parametrize("job", JOBS)
def test_the_legend_holds_what_is_used_and_nothing_else(
    demo_models: dict[str, Model], job: str
) -> None:
    plan = laid_out(demo_models[job])
    used: set[str] = set()
    shown: set[str] = set()
    for item in plan.items:
        names = {p.name for p in item.parts if isinstance(p, SymbolUse)}
        (shown if item.ident.startswith("legend:") else used).update(names)
    assert used == shown


@pytest.mark.parametrize("job", JOBS)
def test_symbols_do_not_stand_on_one_another(demo_models: dict[str, Model], job: str) -> None:
    boxes = [
        (Box(p.at.x, p.at.y, p.at.x + p.size_mm, p.at.y + p.size_mm), item.ident)
        for item in laid_out(demo_models[job]).items
        for p in item.parts
        if isinstance(p, SymbolUse) and item.ident.startswith("plan-thing:")
    ]
    assert boxes
    for i, (one, name) in enumerate(boxes):
        assert not [other for box, other in boxes[i + 1 :] if one.meets(box)], name


def test_the_camera_at_the_end_of_the_duct_is_listed_not_drawn(
    demo_models: dict[str, Model],
) -> None:
    model = demo_models["pottery-studio"]
    assert things_off_plan(model.installation) == ("CAM4: post at the yard gate, at the end of U1",)
    notes = " ".join(t for lines in said(laid_out(model)).values() for t in lines)
    assert "CAM4: post at the yard gate" in notes


def test_north_points_out_through_the_north_wall(demo_models: dict[str, Model]) -> None:
    pottery = demo_models["pottery-studio"].installation
    north = north_direction(pottery, pottery.rooms["Making floor"])
    assert north == (0.0, -1.0)  # wall A, the first, is at the top of the plan
    shop = demo_models["shop-cctv"].installation
    assert north_direction(shop, shop.rooms["Shop"]) is None


def test_a_camera_aimed_left_looks_to_the_left_of_the_elevation(
    demo_models: dict[str, Model],
) -> None:
    model = demo_models["pottery-studio"]
    things = {t.tag: t for t in plan_things(model.installation, model.symbols)}
    wall = model.installation.walls["B"]
    look = look_direction(wall, things["CAM3"])
    # B is the east wall; 45 left as one faces it is towards wall A: up on the sheet, and inwards
    assert look.x == pytest.approx(-(0.5**0.5))
    assert look.y == pytest.approx(-(0.5**0.5))


def test_the_plan_uses_the_largest_scale_that_fits(demo_models: dict[str, Model]) -> None:
    walls = list(demo_models["pottery-studio"].installation.walls.values())
    assert choose_view(walls, Box(0, 0, 250, 200), has_outside=True).scale == 50
    assert choose_view(walls, Box(0, 0, 400, 400), has_outside=True).scale == 25
    assert choose_view(walls, Box(0, 0, 150, 150), has_outside=True).scale == 100


@pytest.mark.parametrize("job", JOBS)
def test_the_symbol_nearest_to_a_tag_is_its_own_or_it_has_a_leader(
    demo_models: dict[str, Model], job: str
) -> None:
    items = laid_out(demo_models[job]).items
    symbols = {
        item.ident.removeprefix("plan-thing:"): box_of_symbol(item)
        for item in items
        if item.ident.startswith("plan-thing:")
    }
    led = {i.ident.removesuffix(":leader") for i in items if i.ident.endswith(":leader")}
    tags = [i for i in items if i.ident.startswith("plan-tag:") and i.kind == "text"]
    assert len(tags) == len(symbols)
    for item in tags:
        tag = item.ident.removeprefix("plan-tag:")
        (words,) = [box_of(t) for t in item.parts if isinstance(t, Text) and t.text == tag]
        nearest = min(symbols, key=lambda name: (gap_mm(words, symbols[name]), name))
        assert nearest == tag or item.ident in led, tag


def box_of_symbol(item: Item) -> Box:
    part = item.parts[0]
    if isinstance(part, SymbolUse):
        return Box(part.at.x, part.at.y, part.at.x + part.size_mm, part.at.y + part.size_mm)
    assert isinstance(part, Path)
    xs, ys = zip(*part.points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


@pytest.mark.parametrize("job", JOBS)
def test_the_legend_shows_symbols_as_large_as_the_plan(
    demo_models: dict[str, Model], job: str
) -> None:
    sizes: dict[str, set[float]] = {}
    for item in laid_out(demo_models[job]).items:
        for part in item.parts:
            if isinstance(part, SymbolUse):
                sizes.setdefault(part.name, set()).add(part.size_mm)
    assert sizes
    for name, found in sizes.items():
        assert found == {size_of(name)}, name


@pytest.mark.parametrize("job", JOBS)
def test_marks_of_walls_stand_clear_of_symbols(demo_models: dict[str, Model], job: str) -> None:
    items = laid_out(demo_models[job]).items
    symbols = [box_of_symbol(i) for i in items if i.ident.startswith("plan-thing:")]
    rings = [
        (item.ident, part)
        for item in items
        if item.ident.startswith("wall-mark:")
        for part in item.parts
        if isinstance(part, Circle)
    ]
    assert rings
    for name, ring in rings:
        c, r = ring.centre, ring.radius_mm
        box = Box(c.x - r, c.y - r, c.x + r, c.y + r)
        assert not any(box.meets(symbol) for symbol in symbols), name
