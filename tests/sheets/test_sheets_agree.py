"""One truth on every sheet: tags, sizes and lengths are the same wherever they stand."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from asfitted.layout.figures import metres
from asfitted.layout.sheet_layout import Text

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

    Sheets = dict[str, tuple[SheetLayout, ...]]
    Models = dict[str, Model]


def words(sheets: tuple[SheetLayout, ...], kind: str) -> str:
    said: list[str] = []
    for sheet in sheets:
        if kind in sheet.name:
            said += [
                " ".join(p.text for p in item.parts if isinstance(p, Text)) for item in sheet.items
            ]
    return "\n".join(said)


@pytest.mark.parametrize("job", ["pottery-studio", "community-shed"])
def test_every_circuit_stands_once_on_diagram_and_chart(
    demo_sheets: Sheets, demo_models: Models, job: str
) -> None:
    model, sheets = demo_models[job], demo_sheets[job]
    for board in model.installation.boards.values():
        chart = words(sheets, f"door-chart-{board.tag.lower()}")
        for way in board.ways:
            assert re.search(rf"(^|[\s,]){re.escape(way.name)}\b", chart, re.MULTILINE), way.name
    diagram = words(sheets, "single-line")
    for circuit in model.installation.circuits.values():
        first, *_ = circuit.name.split()
        assert first in diagram, circuit.tag


@pytest.mark.parametrize("job", ["pottery-studio", "community-shed"])
def test_sizes_and_lengths_on_the_diagram_are_those_of_the_schedule(
    demo_sheets: Sheets, demo_models: Models, job: str
) -> None:
    model, sheets = demo_models[job], demo_sheets[job]
    diagram, schedule = words(sheets, "single-line"), words(sheets, "cable-schedule")
    for tag, cable in model.results.cables.items():
        size = cable.words.split(" mm²")[0] + " mm²"
        length = metres(model.results.routes[tag].length_m)
        row = next(line for line in schedule.splitlines() if line.startswith(f"{tag} "))
        assert size in row
        assert length in row
        if re.search(rf"\b{re.escape(tag)}\b", diagram) and "-" not in tag:
            assert size in diagram


def test_every_cable_of_the_pottery_is_on_an_elevation_or_said_not_to_be(
    demo_sheets: Sheets, demo_models: Models
) -> None:
    model = demo_models["pottery-studio"]
    drawn = words(demo_sheets["pottery-studio"], "elevation")
    for tag, route in model.results.routes.items():
        on_walls = any(leg.wall for leg in route.legs)
        if on_walls:
            assert re.search(rf"\b{re.escape(tag)}\b", drawn), tag


def test_heights_on_the_elevations_are_those_of_the_spec(
    demo_sheets: Sheets, demo_models: Models
) -> None:
    model = demo_models["pottery-studio"]
    for point in model.installation.points.values():
        if point.position.wall and not point.position.out_mm:
            wall = point.position.wall.lower()
            said = words(demo_sheets["pottery-studio"], f"elevation-{wall}")
            assert re.search(rf"\b{point.tag}\b", said), point.tag
            assert f"+{point.position.up_mm:.0f}" in said, point.tag


def test_cut_lengths_add_up(demo_models: Models) -> None:
    for model in demo_models.values():
        for tag, route in model.results.routes.items():
            cable = model.installation.cables[tag]
            if cable.state == "existing":
                continue
            total = sum(part.length_m for part in route.parts)
            assert total == pytest.approx(route.cut_m, abs=0.006), tag
            assert route.cut_m >= route.length_m
