"""The structure of one sheet of each kind, line by line, as it was last looked at and kept."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from asfitted.draw.recorder import record

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from asfitted.layout.sheet_layout import SheetLayout

JOBS = ("pottery-studio", "community-shed")


def _first_of_each_kind(sheets: Sequence[SheetLayout]) -> dict[str, SheetLayout]:
    """Return the first sheet of each name, numbers and what they part left out."""
    found: dict[str, SheetLayout] = {}
    for sheet in sheets:
        name = re.sub(r"^\d+-", "", sheet.name)
        found.setdefault(re.sub(r"-(\d+|[a-z]|db\d+)$", "", name), sheet)
    return found


@pytest.mark.parametrize("job", JOBS)
def test_sheets_are_as_they_were_kept(
    job: str,
    demo_sheets: dict[str, tuple[SheetLayout, ...]],
    golden: Callable[[str, Sequence[str]], None],
) -> None:
    first = _first_of_each_kind(demo_sheets[job])
    golden(f"sheets/{job}", [line for sheet in first.values() for line in record(sheet)])
