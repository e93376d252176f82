"""Which items of a sheet say something else than they did in the revision issued before.

Items are told apart by their ident, what they say by their words and signs; where they stand makes
no difference, so a sheet that was laid out anew shows no change. A thing that was moved in the
building is the exception: where it is drawn in its place, it counts.
"""

from __future__ import annotations

import re
from collections import defaultdict
from typing import TYPE_CHECKING

from asfitted.layout.sheet_layout import SymbolUse, Text
from asfitted.layout.surveyed_ways import MARK

if TYPE_CHECKING:
    from collections.abc import Container, Iterable

    from asfitted.layout.sheet_layout import Item, SheetLayout
    from asfitted.layout.sheet_model import Model

#: Text documents carry no clouds; their changes stand in the record of change.
CLOUDED = frozenset({"Drawings", "Schedules"})
#: Frame and title, general notes, and what follows from how a board is split over sheets.
_NEVER = (
    "frame",
    "title-block",
    "legend",
    "revision",
    "notes",
    "scale-bar",
    "on:",
    "back:",
    "brief:change",
)
#: What follows from how a set is split and numbered: sheets, zones, pieces, parts of a board.
_REFERENCE = re.compile(
    r"\b(?:sheets?\s+)?\d{2,3}(?:/|,?\s+zone\s+)[A-Z]\d{1,2}\b"
    r"|\bsheets?\s+\d+(?:(?:,|\s+to|\s+and)\s+\d+)*\b"
    r"|\bpiece\s+\d+|^\d+:\s|· ways \d+ to \d+ of \d+"
)
#: Notes and keynotes are numbered as they come, and go to another sheet where one has no room.
_NOTE = re.compile(r"(?:note|keynote):\d+")
_OF_WALL = re.compile(r"^[^:]*\bwall [^:]+:\s", re.IGNORECASE)  # before a note moved elsewhere
_NUMBER = ":number"
_TABLE_ROWS = "drops:"  # rows of what goes up and down a wall: they name other things too
_PART = re.compile(r"[-/]\d+$")
_RUNNING = re.compile(r"[/ ]\d+$")
#: What marks a thing where it truly stands: on elevations and plans.
_IN_PLACE = ("thing", "symbol", "plan-thing")
Said = tuple[str, ...]


def sheet_kind(sheet: SheetLayout) -> str:
    """Return what a sheet is, whichever part of it: parts of a schedule are one kind."""
    return _PART.sub("", sheet.key or sheet.name)


def said(item: Item, runs: Container[str] = ()) -> Said:
    """Return what an item says: its words without references to sheets, and its signs.

    Words are taken without their order and stops: a line that is broken otherwise says the same.
    Pieces of the ``runs`` are numbered as they come, so their numbers say nothing.
    """
    words = " ".join(part.text for part in item.parts if isinstance(part, Text))
    if _NOTE.fullmatch(item.ident):
        words = _OF_WALL.sub("", words)
    tokens = re.findall(r"[^\s,;:()]+", _REFERENCE.sub(" ", words))
    sheet = item.link.partition("#")[0]
    tokens = [t for t in tokens if t != sheet and t.rpartition("/")[0] not in runs]
    signs = [f"<{part.name}>" for part in item.parts if isinstance(part, SymbolUse)]
    return tuple(sorted([*tokens, *signs]))


class IssuedSheets:
    """What the sheets of the issued revision said, by kind of sheet."""

    def __init__(self, sheets: Iterable[SheetLayout], model: Model) -> None:
        """Learn the issued sheets, and which things of the newer job changed."""
        self._runs = frozenset(model.installation.containment)
        self._by_ident: dict[str, dict[str, set[Said]]] = defaultdict(lambda: defaultdict(set))
        self._by_group: dict[str, set[tuple[str, Said]]] = defaultdict(set)
        self._anywhere: set[Said] = set()
        self._known = _tags(model)
        for sheet in sheets:
            kind = sheet_kind(sheet)
            for item in sheet.items:
                self._by_ident[kind][item.ident].add(self._said(item))
                self._by_group[kind].add((self._group(item), self._said(item)))
                self._anywhere.add(self._said(item))
        changes = model.changes.changes if model.changes else ()
        self._changed = {c.tag for c in changes} | {e.tag for c in changes for e in c.effects}
        self._moved = {c.tag for c in changes if c.kind == "moved"}

    def knows(self, sheet: SheetLayout) -> bool:
        """Tell whether the issued set had a sheet of this kind."""
        return sheet_kind(sheet) in self._by_ident

    def concerned(self, sheet: SheetLayout) -> tuple[Item, ...]:
        """Return the items of a sheet that are new or say something else, in drawing order."""
        kind = sheet_kind(sheet)
        found = [item for item in sheet.items if self._is_concerned(item, kind)]
        idents = {item.ident for item in found}
        return tuple(item for item in found if _text_of_number(item) in idents)

    def _is_concerned(self, item: Item, kind: str) -> bool:
        if item.ident.startswith(_NEVER) or item.ident.endswith((":head", ":heading", ":title")):
            return False
        if self._was_moved(item):
            return True
        now = self._said(item)
        if not now or item.kind in {"frame", "frame-label"}:
            return False
        if self._stood_before(item, now, kind):
            return False
        if any(MARK in token for token in now):
            return True  # a way that was not surveyed, whatever thing says so
        tags = self._known.intersection(_names(item.ident))
        if tags and item.ident.startswith(_TABLE_ROWS):
            tags |= self._known.intersection(now)
        return not tags or bool(tags & self._changed)

    def _stood_before(self, item: Item, now: Said, kind: str) -> bool:
        """Tell whether the issued set said the same under this ident or one that stands for it."""
        if now in self._by_ident[kind].get(item.ident, ()):
            return True
        if (self._group(item), now) in self._by_group[kind]:
            return True  # a running number, or the next part of a schedule
        # under another number, at the thing itself or on another sheet
        return bool(_NOTE.fullmatch(item.ident)) and now in self._anywhere

    def _said(self, item: Item) -> Said:
        return said(item, self._runs)

    def _group(self, item: Item) -> str:
        """Return the ident of an item without running numbers."""
        return ":".join(
            part if part in self._known else _RUNNING.sub("", part)
            for part in item.ident.split(":")
            if not part.isdigit() and part.rpartition("/")[0] not in self._runs
        )

    def _was_moved(self, item: Item) -> bool:
        first, _, tag = item.ident.partition(":")
        return first in _IN_PLACE and tag in self._moved


def _text_of_number(item: Item) -> str:
    """Return the ident of the note that a number stands before; of all else its own."""
    number = item.ident.removesuffix(_NUMBER)
    return number if _NOTE.fullmatch(number) else item.ident


def _names(ident: str) -> set[str]:
    """Return every tag that an ident may name: its parts, also joined by "+" or to a board."""
    parts = [part for chunk in ident.split(":") for part in (chunk, *chunk.split("+"))]
    board = ident.split(":", maxsplit=1)[0].removeprefix("door-chart/")
    return {*parts, *(f"{board}/{part}" for part in parts), *(p.split("/")[0] for p in parts)}


def _tags(model: Model) -> frozenset[str]:
    """Return the tags of every thing of the job."""
    job = model.installation
    groups = (job.boards, job.circuits, job.points, job.cables, job.containment, job.data_devices)
    return frozenset(tag for group in groups for tag in group)
