"""Rows of document pages lead to what they are about, and every sheet to the drawing list."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest
from sheet_words import items_of, said

from asfitted.sheets._told_things import told_things

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Item, SheetLayout
    from asfitted.layout.sheet_model import Model

    Sheets = tuple[SheetLayout, ...]

JOBS = ("pottery-studio", "community-shed", "shop-cctv")


def led_to(sheets: Sheets, link: str) -> tuple[SheetLayout, Item]:
    number, _, ident = link.partition("#")
    sheet = next(sheet for sheet in sheets if sheet.number == number)
    return sheet, next(item for item in sheet.items if item.ident == ident)


def row(sheets: Sheets, key: str, words: str) -> Item:
    return next(i for _, i in items_of(sheets, key) if said(i).startswith(words))


@pytest.mark.parametrize("job", JOBS)
def test_every_link_to_an_item_ends_at_an_item(demo_sheets: dict[str, Sheets], job: str) -> None:
    sheets = demo_sheets[job]
    idents = {sheet.number: {item.ident for item in sheet.items} for sheet in sheets}
    count = 0
    for sheet in sheets:
        for item in sheet.items:
            number, _, ident = item.link.partition("#")
            if ident:
                assert ident in idents[number], f"{sheet.name} {item.ident} -> {item.link}"
                count += 1
    assert count > len(sheets)


@pytest.mark.parametrize("job", JOBS)
def test_the_number_of_each_sheet_leads_to_its_row_in_the_list(
    demo_sheets: dict[str, Sheets], job: str
) -> None:
    sheets = demo_sheets[job]
    for sheet in sheets:
        number = next(i for i in sheet.items if i.ident == "title-block:number")
        target, item = led_to(sheets, number.link)
        assert target.key.startswith("drawing-list")
        numbers = re.match(r"(\d+)(?: to (\d+))?", said(item))
        assert numbers
        first, last = int(numbers[1]), int(numbers[2] or numbers[1])
        assert first <= int(sheet.number) <= last, said(item)


@pytest.mark.parametrize(
    ("key", "words", "kind", "ident"),
    [
        # what each page names in its first cells, and the row that tells more of it
        ("outstanding", "W08-2 ", "cable-schedule", "cable-schedule:W08-2"),
        ("operation-and-maintenance", "Kiln", "door-chart", "door-chart/DB1:6TP"),
        ("description", "DB2 DB1/9TP", "equipment-schedule", "equipment-schedule:DB2"),
        ("route-brief", "W05 DB1", "cable-schedule", "cable-schedule:W05"),
    ],
)
def test_a_row_leads_to_what_it_is_about(
    demo_sheets: dict[str, Sheets], key: str, words: str, kind: str, ident: str
) -> None:
    sheets = demo_sheets["pottery-studio"]
    sheet, item = led_to(sheets, row(sheets, key, words).link)
    assert sheet.key.startswith(kind)
    assert item.ident == ident


def test_a_row_of_a_schedule_leads_to_the_drawing_of_the_thing(
    demo_sheets: dict[str, Sheets],
) -> None:
    sheets = demo_sheets["pottery-studio"]
    for tag in ("X1", "DB2", "Q1"):
        item = row(sheets, "equipment-schedule", f"{tag} ")
        sheet, place = led_to(sheets, item.link)
        assert sheet.key.startswith("elevation/")
        assert tag in place.ident.split(":")
        assert tag in said(place)


def test_what_a_row_is_about_shows_on_hover(
    demo_sheets: dict[str, Sheets], demo_models: dict[str, Model]
) -> None:
    sheets = demo_sheets["pottery-studio"]
    told = told_things(demo_models["pottery-studio"].installation)
    assert row(sheets, "equipment-schedule", "X1 ").title == told["X1"].title
    assert row(sheets, "outstanding", "W08-2 ").title == told["W08-2"].title


def test_rows_for_the_pen_and_steps_of_work_lead_nowhere(demo_sheets: dict[str, Sheets]) -> None:
    sheets = demo_sheets["pottery-studio"]
    for key, head in (
        ("test-results", ("instruments", "signed")),
        ("route-brief", ("brief:steps", "caution")),
        ("labels/", ("label:",)),
    ):
        rows = [item for _, item in items_of(sheets, key) if item.ident.startswith(head)]
        assert rows
        assert not [item.ident for item in rows if item.link]


def test_a_card_is_one_link_and_leaves_its_boxes_to_be_ticked(
    demo_sheets: dict[str, Sheets],
) -> None:
    cards = [
        i for _, i in items_of(demo_sheets["pottery-studio"], "route-brief") if "card:" in i.ident
    ]
    assert {item.ident.rpartition(":")[2] for item in cards if item.link} == {"head"}
