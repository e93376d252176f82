"""In whose packs a sheet is, in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.sheet_layout import READERS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_model import SheetPlan


def readers_of(sheets: Sequence[SheetPlan]) -> tuple[str, ...]:
    """Return everyone in whose pack some of the sheets are, in the usual order."""
    found = {reader for sheet in sheets for reader in sheet.readers or READERS}
    found = found or set(READERS)  # a sheet of the issue before that is no more: nobody is left out
    return tuple(reader for reader in READERS if reader in found)


def readers_words(sheets: Sequence[SheetPlan], every: str = "every reader") -> str:
    """Return whose packs hold the sheets: ``client, inspector``; ``every`` where all do."""
    found = readers_of(sheets)
    if found == tuple(READERS):
        return every
    return ", ".join(reader.replace("-", " ") for reader in found)
