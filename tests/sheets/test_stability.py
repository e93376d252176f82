"""A small edit leaves the rest of the drawings where it was.

Measure: mean displacement of unchanged items over the diagonal of the sheet, at most 2 % (mental
map preservation in layout: "Layout adjustment and the mental map", J. Visual Languages and
Computing 6, 1995; the limit is our own).
"""

from __future__ import annotations

import math
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from asfitted.draw.item_boxes import item_boxes
from asfitted.pipeline import check_job, lay_out_job

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Item, SheetLayout

SPEC = Path(__file__).parents[2] / "specs" / "pottery-studio.yaml"
MOST = 0.02
LEAST_SHEETS, LEAST_ITEMS = 0.8, 0.7
HAND_DRYER = """\
  - way: DB1/10L3
    name: Hand dryer
    vulnerable: none
    use: heating
    device: RCBO B16 30 mA type A 6 kA
    cable: SWA 3c
    points:
      - {tag: F9, is: fused spur, fuse: 13 A, IP: IP2X, name: hand dryer, load: 2 kW,
         at: "wall D, 0.6 m along, 1.2 m up"}
"""

#: What is edited: words of the spec and what they become.
EDITS = {
    "a longer name": (
        "name: Wheel bench socket-outlet",
        "name: Throwing wheel bench socket-outlet",
    ),
    "a socket-outlet moved by 300 mm": (
        "wall A, 2.3 m along, 1.2 m up",
        "wall A, 2.6 m along, 1.2 m up",
    ),
    "a heavier load": ("load: 7.5 kW", "load: 9 kW"),
    "a socket-outlet raised": ("wall B, 2.8 m along, 1.3 m up", "wall B, 2.8 m along, 1.5 m up"),
    "a wider tray": ("size: 100 x 25", "size: 150 x 25"),
    "a camera with another lens": ("lens: 6 mm", "lens: 8 mm"),
    "a circuit on a spare way": (
        "  # --- new from DB2 ---",
        HAND_DRYER + "  # --- new from DB2 ---",
    ),
}
INSERTED = {"a circuit on a spare way"}


@pytest.fixture(scope="module")
def before() -> tuple[SheetLayout, ...]:
    return lay_out_job(check_job(SPEC))


def _content(item: Item) -> tuple[str, ...]:
    """Return what an item says, wherever it stands."""
    return tuple(getattr(part, "text", getattr(part, "name", "")) for part in item.parts)


def _key(sheet: SheetLayout) -> str:
    return sheet.key  # its number moves where the drawing list grows by a page


@pytest.mark.parametrize("edit", EDITS)
def test_a_small_edit_leaves_the_rest_still(
    edit: str, before: tuple[SheetLayout, ...], tmp_path: Path
) -> None:
    old, new = EDITS[edit]
    text = SPEC.read_text(encoding="utf-8")
    assert text.count(old) == 1, "the edit must name one place"
    path = tmp_path / SPEC.name
    path.write_text(text.replace(old, new), encoding="utf-8")
    after = {_key(sheet): sheet for sheet in lay_out_job(check_job(path))}
    drawings = [sheet for sheet in before if sheet.section == "Drawings"]
    kept = [sheet for sheet in drawings if _key(sheet) in after]
    assert len(kept) >= LEAST_SHEETS * len(drawings)
    means = []
    for sheet in kept:
        mean, share = _displacement(sheet, after[_key(sheet)])
        means.append(mean)
        assert share >= LEAST_ITEMS, f"{sheet.name}: only {share:.0%} of its items are still there"
        # a way put between others moves those behind it by its pitch, on that one sheet
        inserted = edit in INSERTED and "single-line" in sheet.name
        assert mean <= MOST or inserted, f"{sheet.name}: unchanged items move {mean:.1%}"
    assert sum(means) / len(means) <= MOST


def _displacement(old: SheetLayout, new: SheetLayout) -> tuple[float, float]:
    """Return the mean way that unchanged items moved, over the diagonal, and their share."""
    was, now = item_boxes(old), item_boxes(new)
    said = {item.ident: _content(item) for item in new.items}
    same = [
        item.ident for item in old.items if item.parts and said.get(item.ident) == _content(item)
    ]
    moved = [math.dist(was[ident].centre, now[ident].centre) for ident in same]
    return sum(moved) / len(moved) / math.hypot(*old.size_mm), len(same) / len(old.items)
