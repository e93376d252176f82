"""Puts the marks of a revision on the sheets of a set: clouds, triangles, words for new sheets."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.layout.frame import frame_box
from asfitted.layout.linework import widths_for
from asfitted.layout.revision.clouds import clouds_round, outline
from asfitted.layout.revision.concerned import CLOUDED, IssuedSheets
from asfitted.layout.revision.ink import item_box, line_pieces, round_boxes, solid_boxes
from asfitted.layout.revision.table_cells import grids
from asfitted.layout.revision.triangles import (
    Surroundings,
    leader_line,
    place_triangle,
    short_code,
    triangle,
)
from asfitted.layout.sheet_layout import Item
from asfitted.layout.sheet_model import ConcernedSheet
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.geometry import Box
    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

#: Parts of the set that tell of the issue itself, so that every issue changes them.
ALWAYS_NEW = frozenset({"Front", "Handover"})
AS_FITTED = "As fitted"  # such an issue is a record of what is there: it carries no clouds
OFF_BLOCK_MM = 0.4
STUCK_ON = "labels"  # what is printed to be stuck on carries no marks
NEAR_MM = 18.0  # parts of one way of a board that are nearer than this share a cloud


@dataclass(frozen=True)
class SheetChange:
    """What a revision did to one sheet: whether it is new, and the items that changed on it."""

    sheet: SheetLayout
    is_new: bool
    items: tuple[Item, ...]

    @property
    def is_concerned(self) -> bool:
        """Whether the sheet has to be read again."""
        return self.is_new or bool(self.items)

    @property
    def facts(self) -> dict[str, object]:
        """The sheet for a file: number, title, whether it is new, idents of what changed."""
        return {
            "sheet": self.sheet.number,
            "title": self.sheet.title,
            "new": self.is_new,
            "items": [item.ident for item in self.items],
        }

    @property
    def words(self) -> str:
        """The sheet in one line: number, title, what happened to it."""
        count = len(self.items)
        what = "new sheet" if self.is_new else f"{count} item{'s' * (count != 1)} changed"
        return f"{self.sheet.number}  {self.sheet.title}: {what}"


def sheet_changes(
    sheets: Sequence[SheetLayout], issued: Sequence[SheetLayout], model: Model
) -> tuple[SheetChange, ...]:
    """Return what changed on each sheet since the set that was issued."""
    before = IssuedSheets(issued, model)
    return tuple(
        SheetChange(sheet, is_new=not before.knows(sheet), items=before.concerned(sheet))
        for sheet in sheets
        if sheet.section not in ALWAYS_NEW
    )


def with_clouds(
    sheets: Sequence[SheetLayout], issued: Sequence[SheetLayout], model: Model
) -> tuple[SheetLayout, ...]:
    """Return the sheets with clouds round what changed; an as-fitted issue carries none."""
    job = model.installation.job
    if job.status == AS_FITTED:
        return tuple(sheets)
    changes = {change.sheet.number: change for change in sheet_changes(sheets, issued, model)}
    return tuple(
        _marked(changes[sheet.number], job.revision) if sheet.section in CLOUDED else sheet
        for sheet in sheets
    )


def concerned_sheets(
    sheets: Sequence[SheetLayout], issued: Sequence[SheetLayout], model: Model
) -> tuple[ConcernedSheet, ...]:
    """Return the sheets that changed, in the order of the set, each with how it is marked."""
    clouded = {
        sheet.number
        for sheet in with_clouds(sheets, issued, model)
        if any(item.ident.startswith("revision:") for item in sheet.items)
    }
    return tuple(
        ConcernedSheet(c.sheet.key, c.sheet.title, c.is_new, c.sheet.number in clouded)
        for c in sheet_changes(sheets, issued, model)
        if c.is_concerned
    )


def _cores(items: Sequence[Item]) -> list[Box]:
    """Return the boxes of what changed; what stands near on one way or thing is one box."""
    found: list[tuple[str, Box]] = []
    for item in items:
        if not item.parts:
            continue
        owner, box = item.ident.partition(":")[0], item_box(item)
        near = [(o, b) for o, b in found if o == owner and "/" in o and _gap_mm(b, box) <= NEAR_MM]
        for pair in near:
            found.remove(pair)
            box = box.joined(pair[1])
        found.append((owner, box))
    return [box for _, box in found]


def _gap_mm(one: Box, other: Box) -> float:
    """Return how far apart two boxes are, mm; nought where they meet or stand side by side."""
    across = max(one.x0, other.x0) - min(one.x1, other.x1)
    along = max(one.y0, other.y0) - min(one.y1, other.y1)
    return max(across, along, 0.0)


def _marked(change: SheetChange, revision: str) -> SheetLayout:
    sheet = change.sheet
    if change.is_new or not change.items or sheet.key.startswith(STUCK_ON):
        return sheet
    limits = frame_box(sheet.paper).grown(-1.0)
    content = [i for i in sheet.items if not i.ident.startswith("frame")]
    solid = [*solid_boxes(content), title_block_box(sheet.paper).grown(-OFF_BLOCK_MM)]
    block = solid[-1]
    cores = [core for core in _cores(change.items) if not core.meets(block)]
    width = widths_for(sheet.paper).narrow
    marks: list[Item] = []
    taken: list[Box] = []
    clouds = clouds_round(cores, solid, limits)
    solids = (*solid, *round_boxes(content))
    around = Surroundings(solids, tuple(line_pieces(content)), limits, grids(content))
    outers = [cloud.outer for cloud in clouds]
    title = f"changed in revision {revision}"
    code = short_code(revision)
    for number, cloud in enumerate(clouds):
        rest = [box for i, box in enumerate(outers) if i != number]
        box, leader = place_triangle(cloud, code, around, [*taken, *rest])
        taken.append(box)
        name = f"revision:{number + 1}"
        marks.append(Item(f"{name}:cloud", "outline", (outline(cloud, width),), title=title))
        if leader is not None:
            marks.append(Item(f"{name}:leader", "dim", (leader_line(leader, width),)))
        path, text = triangle(box, code, width)
        marks.append(Item(f"{name}:triangle", "outline", (path,), title=title))
        marks.append(Item(f"{name}:code", "text", (text,), title=title))
    return replace(sheet, items=(*sheet.items, *marks))
