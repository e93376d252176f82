"""The structure of one sheet of each kind, line by line, as it was last looked at and kept."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.draw.recorder import record

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from asfitted.layout.sheet_layout import SheetLayout

JOB = "community-shed"


def _first_of_each_kind(sheets: Sequence[SheetLayout]) -> list[SheetLayout]:
    """Return the first sheet of each kind: "elevation/A" for all elevations."""
    first: dict[str, SheetLayout] = {}
    for sheet in sheets:
        first.setdefault(sheet.key.split("/")[0].rstrip("0123456789-"), sheet)
    return list(first.values())


def test_sheets_are_as_they_were_kept(
    demo_sheets: dict[str, tuple[SheetLayout, ...]],
    golden: Callable[[str, Sequence[str]], None],
) -> None:
    first = _first_of_each_kind(demo_sheets[JOB])
    golden(f"sheets/{JOB}", [line for sheet in first for line in record(sheet)])
