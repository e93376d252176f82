"""Fixtures of the drawing tests."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

sys.path.insert(0, str(Path(__file__).parent))  # for drawn_sheets.py beside this file

import drawn_sheets

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout


@pytest.fixture
def example() -> SheetLayout:
    return drawn_sheets.example_sheet()


@pytest.fixture
def symbols_on_a_sheet() -> SheetLayout:
    return drawn_sheets.symbol_sheet()
