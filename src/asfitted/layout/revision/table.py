"""The revisions in and above the title block: the newest next to it, older ones over it.

On A3 the newest has a row in the block. On A4 the block has only its code and date, so that
schedules keep their room, and its row stands over the block where the sheet is free.

Rows stand only where the sheet has room for them; the record of change of the pack has them all.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY, LABEL, shortened
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.revision.ink import ink_box
from asfitted.layout.sheet_layout import Item, Text

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from asfitted.layout.sheet_layout import Path
    from asfitted.resolve.installation import Job
    from asfitted.resolve.job_record import Revision

ROW_MM = 5.5
HEAD_MM = 4.0
MOST_ROWS = 6
CLEAR_MM = 2.0  # between the table and the drawing
#: Left edges as shares of the width: revision, date, what changed, by and checked.
_SHARES = (0.0, 0.115, 0.245, 0.735, 1.0)
_HEADS = ("Revision", "Date", "What changed", "By / checked")
_NOT_RECORDED = "not recorded"
NO_CHANGE = "no change on this sheet"


def untouched(job: Job) -> Job:
    """Return the job facts as a sheet tells them that the newest revision left as it was."""
    if not job.revisions:
        return job
    newest = replace(job.revisions[-1], what=NO_CHANGE)
    return replace(job, revisions=(*job.revisions[:-1], newest))


def _cells(revision: Revision) -> tuple[str, str, str, str]:
    people = f"{revision.by} / {revision.checked}"
    if revision.checked == _NOT_RECORDED:
        people = revision.by
    return revision.revision, revision.date, revision.what, people


def newest_cells(job: Job) -> tuple[str, str, str, str]:
    """Return the cells of the newest revision; without a list, what the title block knows."""
    if job.revisions:
        return _cells(job.revisions[-1])
    return job.revision, job.date, "what changed is not recorded", job.designer


def strip_items(job: Job, box: Box) -> tuple[Item, ...]:
    """Return the row of the newest revision, ruled between its cells."""
    texts = _row(newest_cells(job), box, first_bold=True)
    rules = tuple(polyline((x, box.y0), (x, box.y1), width_mm=0.25) for x in _edges(box)[1:-1])
    return (
        Item("title-block:revision:rules", "outline", rules),
        Item("title-block:revision", "text", texts),
    )


def _edges(box: Box) -> list[float]:
    return [box.x0 + share * box.width for share in _SHARES]


def _row(cells: Sequence[str], box: Box, *, first_bold: bool) -> tuple[Text, ...]:
    edges = _edges(box)
    texts = []
    for number, words in enumerate(cells):
        bold = first_bold and number == 0
        room = edges[number + 1] - edges[number] - 3.0
        shown = shortened(words or _NOT_RECORDED, room, BODY, bold=bold)
        at = Point(edges[number] + 1.6, box.centre.y + BODY / 2 - 0.1)
        texts.append(Text(at, shown, BODY, bold=bold))
    return tuple(texts)


def rows_over_block(
    job: Job, block: Box, content: Iterable[Item], *, newest_is_inside: bool
) -> tuple[Item, ...]:
    """Return the rows of revisions over the title block, as many as the sheet has room for.

    Args:
        job: its revisions, the oldest first.
        block: box of the title block.
        content: everything that the sheet holds besides.
        newest_is_inside: whether the block has a row for the newest revision.
    """
    shown = job.revisions[:-1] if newest_is_inside else job.revisions
    older = tuple(reversed(shown))[:MOST_ROWS]
    taken = [ink_box(part) for item in content for part in item.parts]
    while older:
        top = block.y0 - HEAD_MM - len(older) * ROW_MM
        table = Box(block.x0, top, block.x1, block.y0)
        reach = Box(table.x0 - CLEAR_MM, top - CLEAR_MM, table.x1, table.y1 - 0.5)
        if not any(reach.meets(box) for box in taken):
            return _table(older, table)
        older = older[:-1]
    return ()


def _table(older: Sequence[Revision], table: Box) -> tuple[Item, ...]:
    """Return ruled rows, the newest at the foot, under a row of headings."""
    edges = _edges(table)
    foot = table.y0 + HEAD_MM
    rules: list[Path] = [rectangle(table, width_mm=0.35)]
    rules += [polyline((x, table.y0), (x, table.y1), width_mm=0.25) for x in edges[1:-1]]
    items = []
    for place, revision in enumerate(reversed(older)):
        row = Box(table.x0, foot + place * ROW_MM, table.x1, foot + (place + 1) * ROW_MM)
        rules.append(polyline((row.x0, row.y0), (row.x1, row.y0), width_mm=0.25))
        texts = _row(_cells(revision), row, first_bold=False)
        items.append(Item(f"title-block:revision:{revision.revision}", "text", texts))
    heads = tuple(
        Text(Point(x + 1.5, table.y0 + 2.8), words, LABEL)
        for x, words in zip(edges, _HEADS, strict=False)
    )
    return (
        Item("title-block:revisions:rules", "outline", tuple(rules)),
        Item("title-block:revisions:head", "frame-label", heads),
        *items,
    )
