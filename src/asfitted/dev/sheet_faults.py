"""Faults of a laid-out sheet that its own numbers show: a quick look before it is measured."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from asfitted.draw.item_boxes import part_box
from asfitted.geometry import Box
from asfitted.layout.frame import frame_box
from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Path, Text

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout


def faults_of(sheet: SheetLayout) -> list[str]:
    """Return every fault in words."""
    return [
        *(f"text on text: {words}" for words in texts_on_texts(sheet)),
        *(f"text on line: {words}" for words in texts_on_lines(sheet)),
        *(f"outside the frame: {ident}" for ident in outside_the_frame(sheet)),
        *(f"two items named {ident}" for ident in twice_named(sheet)),
    ]


def twice_named(sheet: SheetLayout) -> list[str]:
    """Return idents that two items bear."""
    named = Counter(item.ident for item in sheet.items)
    return [ident for ident, count in named.items() if count > 1]


def texts_on_texts(sheet: SheetLayout) -> list[str]:
    """Return each pair of texts that stand on one another."""
    boxes = sorted(
        (
            (box_of(part).grown(-0.1), part.text)
            for item in sheet.items
            for part in item.parts
            if isinstance(part, Text)
        ),
        key=lambda found: found[0].x0,
    )
    found = []
    for i, (box, text) in enumerate(boxes):
        for other, words in boxes[i + 1 :]:
            if other.x0 > box.x1:
                break
            if box.meets(other):
                found.append(f"{text!r} on {words!r}")
    return found


def texts_on_lines(sheet: SheetLayout) -> list[str]:
    """Return each text that a wire or a busbar runs through."""
    lines = [
        (item.ident, Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)).grown(0.2))
        for item in sheet.items
        if item.kind in ("wire", "busbar")
        for part in item.parts
        if isinstance(part, Path)
        for a, b in zip(part.points, part.points[1:], strict=False)
    ]
    return [
        f"{part.text!r} on {ident}"
        for item in sheet.items
        for part in item.parts
        if isinstance(part, Text)
        for ident, line in lines
        if line.meets(box_of(part).grown(-0.2))
    ]


def outside_the_frame(sheet: SheetLayout) -> list[str]:
    """Return each item that is not inside the frame."""
    frame = frame_box(sheet.paper).grown(0.3)
    return [
        item.ident
        for item in sheet.items
        if not item.ident.startswith("frame")
        for part in item.parts
        if not frame.holds(part_box(part))
    ]
