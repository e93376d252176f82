"""Faults of a laid-out sheet that its own numbers show: a quick look before it is measured."""

from __future__ import annotations

import itertools
from collections import Counter
from typing import TYPE_CHECKING

from asfitted.dev.ink_on_texts import ink_on_texts, segments
from asfitted.draw.item_boxes import part_box
from asfitted.geometry import Box
from asfitted.layout.frame import frame_box, usable_box
from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Path, Text
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Item, Paper, SheetLayout


def faults_of(sheet: SheetLayout) -> list[str]:
    """Return every fault of a sheet, frame and title block included, in words."""
    is_framed = any(item.kind == "frame" for item in sheet.items)  # label stock is not
    room = frame_box(sheet.paper).grown(0.3) if is_framed else Box(0.0, 0.0, *sheet.size_mm)
    outside = outside_of(room, sheet.items)
    return [
        *_faults_anywhere(sheet.items),
        *(f"outside the frame: {name}" for name in outside if not name.startswith("frame")),
    ]


def faults_of_content(items: tuple[Item, ...], paper: Paper) -> list[str]:
    """Return every fault of what is laid out inside a frame, and wires without a name."""
    outside = outside_of(usable_box(paper).grown(0.6), items)
    block = title_block_box(paper)
    return [
        *_faults_anywhere(items),
        *(f"outside the usable area: {name}" for name in outside),
        *(
            f"in the title block: {item.ident}"
            for item in items
            if any(part_box(part).meets(block) for part in item.parts)
        ),
        *(f"no net: {item.ident}" for item in items if item.kind == "wire" and not item.net),
    ]


def _faults_anywhere(items: tuple[Item, ...]) -> list[str]:
    return [
        *(f"text on text: {words}" for words in texts_on_texts(items)),
        *(f"ink on text: {words}" for words in ink_on_texts(items)),
        *(f"wires meet: {words}" for words in wires_that_meet(items)),
        *(f"two items named {ident}" for ident in twice_named(items)),
    ]


def twice_named(items: tuple[Item, ...]) -> list[str]:
    """Return idents that two items bear."""
    named = Counter(item.ident for item in items)
    return [ident for ident, count in named.items() if count > 1]


def texts_on_texts(items: tuple[Item, ...]) -> list[str]:
    """Return each pair of texts that stand on one another."""
    boxes = sorted(
        (
            (box_of(part).grown(-0.1), part.text)
            for item in items
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


def wires_that_meet(items: tuple[Item, ...]) -> list[str]:
    """Return each pair of upright or level wires of different nets that meet anywhere."""
    wires = sorted(
        (
            (Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)), item)
            for item in items
            if item.kind == "wire"
            for part in item.parts
            if isinstance(part, Path)
            for a, b in segments(part)
        ),
        key=lambda found: found[0].x0,
    )
    found: dict[str, None] = {}
    for i, (one, item) in enumerate(wires):
        for two, other in itertools.takewhile(lambda w, x1=one.x1: w[0].x0 <= x1, wires[i + 1 :]):  # type: ignore[misc]
            if item.net != other.net and two.y0 <= one.y1 and one.y0 <= two.y1:
                found[f"{item.ident} and {other.ident}"] = None
    return list(found)


def outside_of(box: Box, items: tuple[Item, ...]) -> list[str]:
    """Return each item that is not inside a box."""
    return [item.ident for item in items if not all(box.holds(part_box(p)) for p in item.parts)]
