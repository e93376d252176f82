"""Each page of the pack, drawn by pdfium, is the picture that cairo makes of its SVG."""

from __future__ import annotations

import dataclasses
import io
from typing import TYPE_CHECKING

import numpy as np
import pypdfium2
import pytest
from PIL import Image, ImageFilter

from asfitted.draw.pdf import write_pdf_pages
from asfitted.draw.preview import write_png
from asfitted.draw.svg import write_svg
from asfitted.errors import OutputError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import SheetLayout

    Sheets = dict[str, tuple[SheetLayout, ...]]

DPI, SHRINK = 200, 2
#: cairo sets right-aligned text by its ink, pdfium by its advance: up to 0.3 mm apart. That gives
#: differences below this; ink that one of them lacks, or that stands elsewhere, gives more.
APART = 110


def grey(picture: Image.Image, size: tuple[int, int]) -> np.ndarray:
    small = (size[0] // SHRINK, size[1] // SHRINK)
    cropped = picture.convert("L").crop((0, 0, small[0] * SHRINK, small[1] * SHRINK))
    box = cropped.resize(small, Image.Resampling.BOX)
    return np.asarray(box.filter(ImageFilter.GaussianBlur(1.5)), float)


def differences(sheet: SheetLayout, page: pypdfium2.PdfPage) -> np.ndarray:
    try:
        cairo = Image.open(io.BytesIO(write_png(write_svg(sheet), DPI)))
    except OutputError as error:
        pytest.skip(f"NOT COMPARED: {error}")
    pdfium = page.render(scale=DPI / 72).to_pil()
    assert abs(cairo.width - pdfium.width) <= 2
    assert abs(cairo.height - pdfium.height) <= 2
    size = (min(cairo.width, pdfium.width), min(cairo.height, pdfium.height))
    one, two = grey(cairo, size), grey(pdfium, size)
    assert (one < 200).mean() > 0.002, f"{sheet.name} is empty"
    return np.abs(one - two)


def looked_at(sheets: Sequence[SheetLayout]) -> list[SheetLayout]:
    """Return every drawing, and the first of each kind of text page: the others are alike."""
    first = {sheet.key.rstrip("0123456789-"): sheet for sheet in reversed(sheets)}
    return [s for s in sheets if s.section == "Drawings" or s in first.values()]


@pytest.mark.parametrize("job", ["pottery-studio", "community-shed", "shop-cctv"])
def test_pdf_pages_match_the_svg(demo_sheets: Sheets, job: str) -> None:
    sheets = looked_at(demo_sheets[job])
    document = pypdfium2.PdfDocument(write_pdf_pages(sheets))
    for page, sheet in zip(document, sheets, strict=True):
        off = differences(sheet, page)
        assert off.mean() < 2.0, sheet.name
        assert off.max() < APART, f"{sheet.name}: {(off > APART).sum()} pixels differ"
    document.close()


def test_the_comparison_sees_one_missing_tag(demo_sheets: Sheets) -> None:
    sheet = next(s for s in demo_sheets["shop-cctv"] if "data-diagram" in s.name)
    lacking = dataclasses.replace(
        sheet, items=tuple(i for i in sheet.items if i.ident != "CAM1:tag")
    )
    document = pypdfium2.PdfDocument(write_pdf_pages([lacking]))
    assert differences(sheet, document[0]).max() > APART
    document.close()
