"""Which sheets go into whose pack, and in which order. Numbers stay those of the whole set."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.errors import OutputError
from asfitted.layout.sheet_layout import READERS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.pack.pdf_archive import Attachment


#: Who gets the sheet of materials, and with it the prices.
WITH_PRICES = ("second-electrician",)
#: The section that a reader works from: it follows the cover of that reader's pack.
FIRST_SECTION = {"second-electrician": "Route brief"}


def sheets_for(sheets: Sequence[SheetLayout], reader: str = "") -> list[SheetLayout]:
    """Return the sheets of a reader's pack, or of the whole handover when none is named.

    Raises:
        OutputError: no such reader, or a pack without a sheet.
    """
    if reader and reader not in READERS:
        raise OutputError(f'"{reader}" is no reader: {", ".join(READERS)}')
    if not reader:
        chosen = [sheet for sheet in sheets if sheet.in_handover]
    else:
        chosen = [sheet for sheet in sheets if reader in sheet.readers]
    if not chosen:
        raise OutputError(f"no sheet is meant for {reader or 'the handover'}")
    return _in_reading_order(chosen, FIRST_SECTION.get(reader, ""))


def attachments_for(attachments: Sequence[Attachment], reader: str = "") -> list[Attachment]:
    """Return the files that travel in a reader's pack; prices go with the sheet of materials."""
    return [one for one in attachments if not one.holds_prices or reader in WITH_PRICES]


def _in_reading_order(chosen: list[SheetLayout], section: str) -> list[SheetLayout]:
    """Return the sheets with those of a section directly after the first, the cover."""
    cover, rest = chosen[:1], chosen[1:]
    first = [sheet for sheet in rest if sheet.section == section]
    return [*cover, *first, *(sheet for sheet in rest if sheet.section != section)]
