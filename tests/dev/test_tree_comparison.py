"""Our single-line diagrams beside those that Graphviz dot makes of the same tree and text."""

from __future__ import annotations

import shutil
from typing import TYPE_CHECKING

import pytest

from asfitted.dev.tree_comparison import Node, compared, dot_area_mm2
from asfitted.draw.item_boxes import part_box
from asfitted.layout.sheet_layout import Text

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

pytestmark = pytest.mark.skipif(
    shutil.which("dot") is None, reason="NOT COMPARED with dot: graphviz is not installed"
)


def test_dot_gives_the_size_of_a_known_tree() -> None:
    # two boxes one above the other: 20 wide, 10 + 5 + 10 high
    nodes = [Node("a", 20, 10, ""), Node("b", 20, 10, "a")]
    assert dot_area_mm2(nodes) == pytest.approx(20 * 25, rel=0.02)


def test_no_crossing_no_overlap_and_no_more_area_over_all_sheets(
    every_job: dict[str, tuple[Model, tuple[SheetLayout, ...]]],
) -> None:
    ours = theirs = 0.0
    for _, sheets in every_job.values():
        for sheet in sheets:
            if not sheet.key.startswith("single-line"):
                continue
            one = compared(sheet)
            if one is None:
                continue
            assert one.our_crossings == 0
            assert _overlaps(sheet) == 0
            ours += one.our_area_mm2
            theirs += one.dot_area_mm2
    assert 0 < ours <= theirs


def _overlaps(sheet: SheetLayout) -> int:
    boxes = [part_box(p) for item in sheet.items for p in item.parts if isinstance(p, Text)]
    return sum(
        a.grown(-0.05).meets(b.grown(-0.05)) for i, a in enumerate(boxes) for b in boxes[i + 1 :]
    )
