"""Bookmarks, page labels and links of the PDF."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pypdf.generic import (
    ArrayObject,
    DictionaryObject,
    FloatObject,
    NameObject,
    NullObject,
    NumberObject,
)

from asfitted.draw.item_boxes import item_boxes
from asfitted.draw.pdf import POINTS_PER_MM

if TYPE_CHECKING:
    from collections.abc import Sequence

    from pypdf import PageObject, PdfWriter
    from pypdf.generic import IndirectObject, PdfObject

    from asfitted.geometry import Box
    from asfitted.layout.sheet_layout import SheetLayout

PRINTED = 4  # flag of an annotation that is printed with its page
ABOVE_MM = 12.0  # what lies above a target stays in sight


def add_bookmarks(writer: PdfWriter, sheets: Sequence[SheetLayout]) -> None:
    """Add one bookmark for each sheet under that of its part of the set, in the order of pages.

    A part that another one interrupts has a bookmark at each place where it begins.
    """
    part: IndirectObject | None = None
    section = None
    for i, sheet in enumerate(sheets):
        if sheet.section != section:
            section = sheet.section
            part = writer.add_outline_item(title=section, page_number=i, bold=True)
        words = f"{sheet.number}  {sheet.title}"
        writer.add_outline_item(title=words, page_number=i, parent=part)


def add_page_labels(writer: PdfWriter, sheets: Sequence[SheetLayout]) -> None:
    """Label each page with the number of its sheet, which is that of the whole set."""
    for i, sheet in enumerate(sheets):
        writer.set_page_label(i, i, prefix=f"Sheet {sheet.number}")


def add_links(writer: PdfWriter, sheets: Sequence[SheetLayout]) -> None:
    """Turn every item that names a sheet, or an item on it, into a link.

    What leads to a sheet that this pack does not hold stays as plain words.
    """
    pages = {sheet.number: i for i, sheet in enumerate(sheets)}
    leaves = list(writer.pages)
    boxes: dict[int, dict[str, Box]] = {}

    def boxes_of(page: int) -> dict[str, Box]:
        if page not in boxes:
            boxes[page] = dict(item_boxes(sheets[page]))
        return boxes[page]

    for i, sheet in enumerate(sheets):
        for item in sheet.items:
            number, _, target = item.link.partition("#")
            if not item.link or number not in pages or item.ident not in boxes_of(i):
                continue
            page = pages[number]
            link = _link(
                _corners(boxes_of(i)[item.ident].grown(0.5), sheet),
                leaves[page].indirect_reference,
                _top(boxes_of(page).get(target), sheets[page]) if target else None,
            )
            _annotate(writer, leaves[i], link)


def _corners(box: Box, sheet: SheetLayout) -> list[FloatObject]:
    """Return a box of a sheet in points, counted from the bottom left."""
    height = sheet.size_mm[1]
    corners = (box.x0, height - box.y1, box.x1, height - box.y0)
    return [FloatObject(round(c * POINTS_PER_MM, 3)) for c in corners]


def _top(box: Box | None, sheet: SheetLayout) -> float | None:
    """Return where the window is put so that a target stands below its top edge, points."""
    if box is None:
        return None
    height = sheet.size_mm[1]
    return round(min(height, height - box.y0 + ABOVE_MM) * POINTS_PER_MM, 3)


def _link(
    corners: list[FloatObject], page: IndirectObject | None, top: float | None
) -> DictionaryObject:
    where: list[PdfObject] = [NameObject("/Fit")]
    if top is not None:
        where = [NameObject("/XYZ"), NullObject(), FloatObject(top), NullObject()]
    action = DictionaryObject(
        {
            NameObject("/S"): NameObject("/GoTo"),
            NameObject("/D"): ArrayObject([page, *where]),
        }
    )
    return DictionaryObject(
        {
            NameObject("/Type"): NameObject("/Annot"),
            NameObject("/Subtype"): NameObject("/Link"),
            NameObject("/Rect"): ArrayObject(corners),
            NameObject("/Border"): ArrayObject([NumberObject(0)] * 3),
            NameObject("/F"): NumberObject(PRINTED),
            NameObject("/A"): action,
        }
    )


def _annotate(writer: PdfWriter, leaf: PageObject, link: DictionaryObject) -> None:
    held = leaf.get("/Annots", ArrayObject())
    held.append(writer._add_object(link))  # noqa: SLF001 - pypdf's own way writes page numbers
    leaf[NameObject("/Annots")] = held
