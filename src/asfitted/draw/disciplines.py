"""Which layer a drawn thing belongs on, by discipline and by how it is presented."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.sheet_layout import SymbolUse, Text

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Item, Primitive, SheetLayout

#: Disciplines by the first word of an item's ident, where it says more than the sheet does.
_BY_IDENT = {
    "sheet": ("frame", "title", "revision"),
    "building": (
        "wall",
        "opening",
        "room",
        "crossing",
        "off",
        "through",
        "level",
        "north",
        "passage",
    ),
    "containment": ("run", "clipped", "strip", "section", "support", "fold"),
    "data": ("camera", "view", "data", "wedge"),
    "notes": ("note", "notes", "legend", "callout", "key", "scale"),
}
_BY_SHEET = (
    ("data-diagram", "data"),
    ("camera", "data"),
    ("containment", "containment"),
    ("single-line", "power"),
    ("distribution", "power"),
    ("elevation", "power"),
    ("plan", "power"),
    ("detail", "power"),
)
_DISCIPLINE = {word: name for name, words in _BY_IDENT.items() for word in words}


def discipline_of(sheet: SheetLayout, item: Item) -> str:
    """Return "power", "data", "containment", "building", "notes", "sheet" or "tables"."""
    head = item.ident.replace("/", "-").replace(":", "-").split("-")[0].split(" ")[0]
    if item.kind in ("frame", "frame-label"):
        return "sheet"
    if head in _DISCIPLINE:
        return _DISCIPLINE[head]
    return next((name for word, name in _BY_SHEET if word in sheet.name), "tables")


def layer_of(sheet: SheetLayout, item: Item, part: Primitive) -> str:
    """Return the layer of one primitive, such as "containment-lines" or "power-text"."""
    if item.kind == "dim":
        shown = "dimensions"
    elif isinstance(part, Text):
        shown = "text"
    elif isinstance(part, SymbolUse):
        shown = "symbols"
    else:
        shown = "lines"
    return f"{discipline_of(sheet, item)}-{shown}"
