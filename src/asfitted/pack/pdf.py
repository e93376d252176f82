"""One PDF of the whole set: pages from the primitives, then bookmarks, page labels and links."""

from __future__ import annotations

import io
import re
from typing import TYPE_CHECKING

from pypdf import PdfReader, PdfWriter
from pypdf.annotations import Link
from pypdf.generic import Fit

from asfitted.draw.item_boxes import item_boxes
from asfitted.draw.pdf import POINTS_PER_MM, write_pdf_pages

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.resolve.installation import Job


def pack_name(job: Job) -> str:
    """Return the file stem of the pack: number, revision and status, fit for any file system."""
    words = f"{job.number}-{job.revision}-{job.status}"
    return re.sub(r"[^A-Za-z0-9.]+", "-", words).strip("-")


def pack_pdf(sheets: Sequence[SheetLayout], job: Job) -> bytes:
    """Return the PDF of all sheets, bookmarked by section and sheet. Same sheets, same bytes."""
    reader = PdfReader(io.BytesIO(write_pdf_pages(sheets, title=f"{job.number} {job.title}")))
    writer = PdfWriter()
    for page in reader.pages:
        writer.add_page(page)
    _bookmarks(writer, sheets)
    for i, sheet in enumerate(sheets):
        writer.set_page_label(i, i, prefix=f"Sheet {sheet.number}")
    _links(writer, sheets)
    writer.add_metadata(
        {
            "/Title": f"{job.number} {job.title}",
            "/Author": job.installer,
            "/Subject": f"{job.site}: {job.status}, revision {job.revision}, {job.date}",
            "/Creator": "asfitted",
            "/Producer": "asfitted",
        }
    )
    writer.page_mode = "/UseOutlines"
    writer.compress_identical_objects()
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def _bookmarks(writer: PdfWriter, sheets: Sequence[SheetLayout]) -> None:
    sections: dict[str, object] = {}
    for i, sheet in enumerate(sheets):
        if sheet.section not in sections:
            sections[sheet.section] = writer.add_outline_item(
                title=sheet.section, page_number=i, bold=True
            )
        parent = sections[sheet.section]
        words = f"{sheet.number}  {sheet.title}"
        writer.add_outline_item(title=words, page_number=i, parent=parent)  # type: ignore[arg-type]


def _links(writer: PdfWriter, sheets: Sequence[SheetLayout]) -> None:
    """Turn every item that names a sheet in ``link`` into a link to that page."""
    pages = {sheet.number: i for i, sheet in enumerate(sheets)}
    for i, sheet in enumerate(sheets):
        linked = [item for item in sheet.items if item.link]
        if not linked:
            continue
        boxes = item_boxes(sheet)
        height = sheet.size_mm[1]
        for item in linked:
            target = pages.get(item.link.partition("#")[0])
            if target is None or item.ident not in boxes:
                continue
            box = boxes[item.ident].grown(0.5)
            corners = (box.x0, height - box.y1, box.x1, height - box.y0)
            rect = tuple(c * POINTS_PER_MM for c in corners)
            link = Link(rect=rect, target_page_index=target, fit=Fit.fit(), border=[0, 0, 0])  # type: ignore[arg-type]
            writer.add_annotation(i, link)
