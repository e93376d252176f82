"""Frame and zones against ISO 5457 (figures from memory of the standard)."""

from __future__ import annotations

import pytest

from asfitted.geometry import Box, Point
from asfitted.layout.frame import frame_box, frame_items, usable_box, zone_of
from asfitted.layout.sheet_layout import PAPERS, Paper, Text


@pytest.mark.parametrize(
    ("paper", "usable"),
    [("A3", (390, 277)), ("A4", (267, 190)), ("A4 portrait", (180, 277))],
)
def test_drawing_space_of_iso_5457_margins(paper: Paper, usable: tuple[float, float]) -> None:
    # 20 mm filing margin left, 10 mm on the other three sides: ISO 5457 (memory)
    box = frame_box(paper)
    assert (box.width, box.height) == usable


@pytest.mark.parametrize(
    ("paper", "columns", "rows"), [("A3", 8, 6), ("A4", 6, 4), ("A4 portrait", 4, 6)]
)
def test_counts_of_zone_fields(paper: Paper, columns: int, rows: int) -> None:
    # A3 has 8 x 6 fields of 50 mm, A4 6 x 4: ISO 5457 (memory)
    width, height = PAPERS[paper]
    corner = zone_of(paper, Point(width - 11, height - 11))
    assert corner == f"{'ABCDEFGH'[rows - 1]}{columns}"
    assert zone_of(paper, Point(21, 11)) == "A1"


def test_zone_changes_at_the_middle_of_the_sheet() -> None:
    assert zone_of("A3", Point(209.9, 148.4)) == "C4"
    assert zone_of("A3", Point(210.1, 148.6)) == "D5"


def test_letters_skip_i_and_o() -> None:
    letters = {
        p.text
        for item in frame_items("A3")
        for p in item.parts
        if isinstance(p, Text) and p.text.isalpha()
    }
    assert letters == set("ABCDEF")


def test_usable_area_lies_five_millimetres_inside_the_frame() -> None:
    assert usable_box("A3") == Box(25, 15, 405, 282)
