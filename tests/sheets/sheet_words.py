"""What laid-out sheets say, item by item, and whether some words stand there."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.layout.sheet_layout import Text

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from asfitted.layout.sheet_layout import Item, SheetLayout

    Sheets = tuple[SheetLayout, ...]


def said(item: Item) -> str:
    """Return the words of an item in drawing order, its lines joined by spaces."""
    return " ".join(part.text for part in item.parts if isinstance(part, Text))


def items_of(sheets: Iterable[SheetLayout], *keys: str) -> Iterator[tuple[SheetLayout, Item]]:
    """Yield the items that speak, of the sheets whose key starts with one of some words.

    Frame and title block are left out.
    """
    for sheet in sheets:
        if sheet.key.startswith(keys):
            for item in sheet.items:
                if not item.ident.startswith(("title-block", "frame")) and said(item):
                    yield sheet, item


def words_by_ident(sheets: Iterable[SheetLayout], *keys: str) -> dict[str, str]:
    """Return what each item of some sheets says; items of one name on two sheets are joined."""
    found: dict[str, str] = {}
    for _, item in items_of(sheets, *keys):
        found[item.ident] = f"{found.get(item.ident, '')} {said(item)}".strip()
    return found


def stands_in(wanted: str, words: str) -> bool:
    """Tell whether words stand whole among others, however these were broken into lines.

    Example:
        >>> stands_in("6 mm²", "W05 4c × 16 mm²"), stands_in("a switch-fuse", "a switch- fuse")
        (False, True)
    """
    pattern = re.sub(r"(\\ )+", r"\\s+", re.escape(wanted))
    pattern = re.sub(r"(\\-|/)", r"\1\\s*", pattern)
    return re.search(rf"(?<![\w.]){pattern}(?!\w|\.\d)", words) is not None


def without(sheets: Sheets, ident: str) -> Sheets:
    """Return the sheets with one thing rubbed out."""
    left = tuple(
        replace(sheet, items=tuple(i for i in sheet.items if i.ident != ident)) for sheet in sheets
    )
    assert left != sheets, ident
    return left


def reworded(sheets: Sheets, ident: str, change: Callable[[str], str]) -> Sheets:
    """Return the sheets with the words of one thing changed."""

    def other(item: Item) -> Item:
        if item.ident != ident:
            return item
        parts = (replace(p, text=change(p.text)) if isinstance(p, Text) else p for p in item.parts)
        return replace(item, parts=tuple(parts))

    changed = tuple(replace(s, items=tuple(other(i) for i in s.items)) for s in sheets)
    assert changed != sheets, ident
    return changed
