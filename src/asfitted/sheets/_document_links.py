"""Links and hover words of document pages: from a row to the thing that it is about, and back.

A row of a text page leads to the row of the schedule that tells more of what its first cells name;
a row of a schedule leads to the drawing on which the thing stands; the number in the title block
leads to the row of the sheet in the drawing list. What a sheet kind links itself stays.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.layout.sheet_layout import Text

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.layout.sheet_layout import Item, SheetLayout
    from asfitted.sheets._told_things import Told

DRAWN = "Drawings"
STUCK_ON = "labels/"  # printed to be stuck on: nothing to follow there
NUMBER = "title-block:number"
WORKING = "calculations:"
LIST = "sheets:"  # head of the ident of a row of the drawing list
#: Drawings on which a thing is looked for, the most telling first.
SHOWN_ON = ("elevation/", "floor-plan/", "single-line-diagram", "data-diagram", "containment")
#: Items of a page that are no rows to follow: headings, notes, frame, rows for the pen.
_NO_ROW = (
    "board:",
    "brief:steps",
    "by-hand",
    "caution",
    "frame",
    "instruments",
    "page",
    "revision",
    "signed",
    "text",
    "title-block",
)
_NO_ROW_END = (":head", ":heading", ":ticks", ":words", ":beside")
_TAG = re.compile(r"[^\s,;:]+")


def document_linked(
    sheets: Sequence[SheetLayout], told: Mapping[str, Told], rows: Mapping[str, str]
) -> tuple[SheetLayout, ...]:
    """Return the sheets with links on their document pages, and from every sheet to the list.

    Args:
        sheets: every sheet of the set.
        told: what there is to say of each thing, by its tag.
        rows: where each row of a schedule stands, by its ident: ``31#cable-schedule:W05``.
    """
    shown, listed = _shown(sheets, told), _listed(sheets)
    return tuple(_linked(sheet, told, rows, shown, listed) for sheet in sheets)


def _shown(sheets: Sequence[SheetLayout], told: Mapping[str, Told]) -> dict[str, str]:
    """Return, by tag, the link to the words that name a thing on a drawing."""
    found: dict[str, str] = {}
    for kind in SHOWN_ON:
        for sheet in sheets:
            if not sheet.key.startswith(kind):
                continue
            for item in sheet.items:
                tag = _tag_of_ident(item, told) if item.kind == "text" else ""
                if tag:
                    found.setdefault(tag, f"{sheet.number}#{item.ident}")
    return found


def _tag_of_ident(item: Item, told: Mapping[str, Told]) -> str:
    return next((part for part in item.ident.split(":") if part in told), "")


def _listed(sheets: Sequence[SheetLayout]) -> dict[str, str]:
    """Return, by the number of a sheet, the link to its row in the drawing list."""
    rows = {
        item.ident.removeprefix(LIST): f"{sheet.number}#{item.ident}"
        for sheet in sheets
        if sheet.key.startswith("drawing-list")
        for item in sheet.items
        if item.ident.startswith(LIST) and item.link
    }
    found, last = {}, ""
    for sheet in sheets:
        last = rows.get(sheet.key, last)  # a series is listed in the row of its first
        found[sheet.number] = last
    return found


def _linked(
    sheet: SheetLayout,
    told: Mapping[str, Told],
    rows: Mapping[str, str],
    shown: Mapping[str, str],
    listed: Mapping[str, str],
) -> SheetLayout:
    is_document = sheet.section != DRAWN and not sheet.key.startswith(STUCK_ON)
    items = []
    for drawn in sheet.items:
        item = _at_its_page(drawn, rows)
        if item.ident == NUMBER and listed[sheet.number]:
            title = item.title or "to the drawing list"
            items.append(replace(item, link=item.link or listed[sheet.number], title=title))
        elif is_document and _is_row(item):
            items.append(_told_row(item, sheet.number, told, rows, shown))
        else:
            items.append(item)
    return replace(sheet, items=tuple(items))


def _at_its_page(item: Item, rows: Mapping[str, str]) -> Item:
    """Return an item whose link names the page that its row stands on, of several of a schedule."""
    link = rows.get(item.link.partition("#")[2], item.link)
    return item if link == item.link else replace(item, link=link)


def _is_row(item: Item) -> bool:
    """Tell whether an item is a row of a table, a tag on a sketch, or the head of a card."""
    if item.kind != "text" or item.ident.startswith(_NO_ROW):
        return False
    if item.ident.startswith(WORKING):
        return item.ident.endswith(":0")  # the first row of a circuit
    is_card = item.ident.startswith("card:") and item.ident.endswith(":head")
    return is_card or not item.ident.endswith(_NO_ROW_END)


def _told_row(
    item: Item,
    number: str,
    told: Mapping[str, Told],
    rows: Mapping[str, str],
    shown: Mapping[str, str],
) -> Item:
    """Return a row with what it is about to hover over, and a link to where more is told."""
    tag = _subject(item, told)
    if not tag:
        return item
    row = told[tag].row
    link = shown.get(tag, "") if item.ident == row else rows.get(row, "") or shown.get(tag, "")
    if item.link or link == f"{number}#{item.ident}" or _names_a_sheet(item):
        link = ""
    return replace(item, title=item.title or told[tag].title, link=item.link or link)


def _subject(item: Item, told: Mapping[str, Told]) -> str:
    """Return the tag of what a row is about.

    It stands in the ident, at the beginning of the first cell, or alone in another cell.
    """
    if tag := _tag_of_ident(item, told):
        return tag
    cells = [part.text for part in item.parts if isinstance(part, Text)]
    first = _TAG.match(cells[0]) if cells else None
    if first and first[0] in told:
        return first[0]
    return next((cell for cell in cells if cell in told), "")


def _names_a_sheet(item: Item) -> bool:
    return any(isinstance(part, Text) and "sheet" in part.text for part in item.parts)
