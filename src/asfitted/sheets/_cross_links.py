"""Links from sheet to sheet by what things are called: circuit to chart, cable to schedule.

Sheet kinds do not know each other's items; here, when all are laid out, an item that names a thing
is led to the row that tells more of it. An item that already leads somewhere keeps its link.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.layout.sheet_layout import Text
from asfitted.sheets._document_links import document_linked
from asfitted.sheets._told_things import thing_of, told_things

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from asfitted.layout.sheet_layout import Item, SheetLayout
    from asfitted.resolve.installation import Installation
    from asfitted.sheets._told_things import Told

#: Tables whose rows can be led to: the head of the item's ident, before the tag.
TABLES = (
    "cable-schedule",
    "camera-schedule",
    "calculations",
    "containment-schedule",
    "door-chart",
    "equipment-schedule",
)
#: Sheets whose items are things: they are told of and led to their rows.
DRAWN = "Drawings"
#: Details speak of conductors: there "L1" is a line, not luminaire L1. Their items begin with the
#: thing that a figure applies to; rows of their tables end with it.
_GENERAL = "details"
#: Items that are no thing of the job.
_OF_THE_SHEET = ("frame", "title-block", "legend", "revision", "cloud", "wall", "room")
_ON_DIAGRAM = re.compile(r"(?P<circuit>[^:]+/[^:]+):(?P<what>name|way|figures|(?P<leg>\d+):cable)")


def cross_linked(
    sheets: Sequence[SheetLayout], installation: Installation
) -> tuple[SheetLayout, ...]:
    """Return the sheets with links between items that tell of one thing."""
    rows, told = _rows(sheets), told_things(installation)
    linked = (_linked(sheet, rows, installation) for sheet in sheets)
    drawings = [_told(sheet, rows, told) for sheet in linked]
    return document_linked(drawings, told, rows)


def _told(sheet: SheetLayout, rows: Mapping[str, str], told: Mapping[str, Told]) -> SheetLayout:
    """Return a drawing whose things say what they are and lead to their rows."""
    if sheet.section != DRAWN:
        return sheet
    find = _in_detail if sheet.key.startswith(_GENERAL) else thing_of
    return replace(sheet, items=tuple(_said_of(item, rows, told, find) for item in sheet.items))


def _in_detail(ident: str, told: Mapping[str, Told]) -> Told | None:
    """Return the thing that an item of a detail sheet belongs to."""
    segments = ident.split(":")
    return told.get(segments[-1] if segments[0].startswith(_GENERAL) else segments[0])


def _said_of(
    item: Item,
    rows: Mapping[str, str],
    told: Mapping[str, Told],
    find: Callable[[str, Mapping[str, Told]], Told | None],
) -> Item:
    if item.ident.startswith(_OF_THE_SHEET) or (item.title and item.link):
        return item
    thing = find(item.ident, told)
    if thing is None:
        return item
    link = "" if _names_a_sheet(item) else rows.get(thing.row, "")
    return replace(item, title=item.title or thing.title, link=item.link or link)


def _names_a_sheet(item: Item) -> bool:
    """Tell whether an item leads, or says that it leads, to another sheet."""
    return item.kind == "flag" or any(
        isinstance(part, Text) and "sheet" in part.text for part in item.parts
    )


def _rows(sheets: Sequence[SheetLayout]) -> dict[str, str]:
    """Return, by the ident of a row, the link that leads to it: "31#cable-schedule:W05"."""
    found: dict[str, str] = {}
    for sheet in sheets:
        for item in sheet.items:
            if item.kind == "text" and item.ident.startswith(TABLES):
                found.setdefault(item.ident, f"{sheet.number}#{item.ident}")
    return found


def _linked(sheet: SheetLayout, rows: dict[str, str], installation: Installation) -> SheetLayout:
    items = tuple(_led(item, sheet.number, rows, installation) for item in sheet.items)
    return replace(sheet, items=items) if items != sheet.items else sheet


def _led(item: Item, number: str, rows: dict[str, str], installation: Installation) -> Item:
    if item.link or item.kind != "text":
        return item
    link = rows.get(_target(item.ident, installation), "")
    if not link or link == f"{number}#{item.ident}":
        return item
    return replace(item, link=link)


def _target(ident: str, installation: Installation) -> str:
    """Return the ident of the row that tells more of what an item names, "" for none."""
    table, _, tag = ident.partition(":")
    if table == "cable-schedule" and tag in installation.cables:
        return f"calculations:{installation.cables[tag].circuit}:0"
    if table == "cut-list" and tag in installation.cables:
        return f"cable-schedule:{tag}"
    if table == "camera-schedule" and tag in installation.data_devices:
        return _cable_row(tag, installation)
    if table.startswith("door-chart/"):
        circuit = installation.circuits.get(f"{table.removeprefix('door-chart/')}/{tag}")
        return f"cable-schedule:{circuit.cables[0]}" if circuit and circuit.cables else ""
    if tag == "tag" and table in installation.data_devices:
        camera = installation.data_devices[table].kind == "camera"
        return f"camera-schedule:{table}" if camera else _cable_row(table, installation)
    return _diagram_target(ident, installation)


def _cable_row(tag: str, installation: Installation) -> str:
    """Return the row of the cable that ends at a data device."""
    found = (c.tag for c in installation.cables.values() if tag in {c.circuit, c.to_end})
    cable = next(found, "")
    return f"cable-schedule:{cable}" if cable else ""


def _diagram_target(ident: str, installation: Installation) -> str:
    """Return where an item of the single-line diagram leads: chart, cable or working."""
    match = _ON_DIAGRAM.fullmatch(ident)
    circuit = installation.circuits.get(match["circuit"]) if match else None
    if match is None or circuit is None:
        return ""
    if match["leg"]:
        leg = int(match["leg"]) - 1
        return f"cable-schedule:{circuit.cables[leg]}" if leg < len(circuit.cables) else ""
    if match["what"] == "figures":
        return f"calculations:{circuit.tag}:0"
    return f"door-chart/{circuit.board}:{circuit.way}"
