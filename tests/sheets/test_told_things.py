"""Whoever points at a thing on a drawing is told what it is and led to its row."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from asfitted.sheets._told_things import Told, thing_of, told_things

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

THINGS = ("symbol", "wire", "busbar")
LEAST_TOLD = 0.95


def test_a_tag_is_found_as_a_whole_segment_first() -> None:
    told = {"DB1": Told("board", ""), "DB1/3TP": Told("circuit", "x"), "T1": Told("run", "")}
    assert thing_of("DB1/3TP:1:line", told) == told["DB1/3TP"]
    assert thing_of("DB1:busbar", told) == told["DB1"]
    assert thing_of("wall D/T1:edge", told) == told["T1"]
    assert thing_of("T10:edge", told) is None


@pytest.mark.parametrize("job", ["pottery-studio", "community-shed", "shop-cctv"])
def test_symbols_and_wires_say_what_they_are(
    demo_sheets: dict[str, tuple[SheetLayout, ...]], job: str
) -> None:
    things = [
        item
        for sheet in demo_sheets[job]
        if sheet.section == "Drawings"
        for item in sheet.items
        if item.kind in THINGS and not item.ident.startswith("legend")
    ]
    told = [item for item in things if item.title]
    assert things
    assert len(told) >= LEAST_TOLD * len(things)


def test_a_thing_leads_to_its_row(
    demo_sheets: dict[str, tuple[SheetLayout, ...]], demo_models: dict[str, Model]
) -> None:
    sheets = {sheet.number: sheet for sheet in demo_sheets["pottery-studio"]}
    rows = told_things(demo_models["pottery-studio"].installation)
    device = next(
        item
        for sheet in sheets.values()
        if sheet.key.startswith("single-line")
        for item in sheet.items
        if item.ident == "DB1/3TP:device"
    )
    number, _, ident = device.link.partition("#")
    assert ident == rows["DB1/3TP"].row == "door-chart/DB1:3TP"
    assert any(row.ident == ident for row in sheets[number].items)
