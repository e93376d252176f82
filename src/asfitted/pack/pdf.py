"""One PDF of a set of sheets: pages from the primitives, then bookmarks, labels, links, files."""

from __future__ import annotations

import io
import re
from typing import TYPE_CHECKING

from pypdf import PdfReader, PdfWriter

from asfitted.draw.pdf import write_pdf_pages
from asfitted.pack.pdf_archive import add_archive_parts
from asfitted.pack.pdf_links import add_bookmarks, add_links, add_page_labels

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.pack.pdf_archive import Attachment
    from asfitted.resolve.installation import Job


def pack_name(job: Job, reader: str = "") -> str:
    """Return the file stem of a pack: number, revision, status and reader, fit for any system."""
    words = f"{job.number}-{job.revision}-{job.status}"
    if reader:
        words += f"-{reader}"
    return re.sub(r"[^A-Za-z0-9.]+", "-", words).strip("-")


def pack_pdf(
    sheets: Sequence[SheetLayout], job: Job, attachments: Sequence[Attachment] = ()
) -> bytes:
    """Return the PDF of some sheets of a job. Same sheets and files, same bytes.

    Args:
        sheets: the sheets in order; links to sheets that are not among them are left out.
        job: facts for the metadata.
        attachments: files to embed, such as the job file.

    Raises:
        OutputError: no sheets, an unknown symbol, or a length that is not a number.
    """
    pages = write_pdf_pages(sheets, title=f"{job.number} {job.title}")
    writer = PdfWriter()
    for page in PdfReader(io.BytesIO(pages)).pages:
        writer.add_page(page)
    add_bookmarks(writer, sheets)
    add_page_labels(writer, sheets)
    add_links(writer, sheets)
    writer.page_mode = "/UseOutlines"
    writer.compress_identical_objects()
    add_archive_parts(writer, job, attachments, pages)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()
