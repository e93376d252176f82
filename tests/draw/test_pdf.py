"""The PDF holds real text, only embedded fonts, right page sizes, and the picture of the SVG."""

from __future__ import annotations

import io
from dataclasses import replace
from typing import TYPE_CHECKING, Any

import drawn_sheets
import numpy as np
import pypdf
import pypdfium2
import pytest
from PIL import Image, ImageFilter

from asfitted.draw.item_boxes import part_box
from asfitted.draw.pdf import item_boxes, write_pdf_pages
from asfitted.draw.preview import write_png
from asfitted.draw.svg import write_svg
from asfitted.errors import MissingGlyphError, OutputError
from asfitted.geometry import Box, Point
from asfitted.layout.sheet_layout import Item, SheetLayout, SymbolUse, Text

if TYPE_CHECKING:
    from collections.abc import Iterator


@pytest.fixture
def pack() -> tuple[SheetLayout, ...]:
    return (
        drawn_sheets.example_sheet(),
        drawn_sheets.small_sheet("02", "A4"),
        drawn_sheets.small_sheet("03", "A4 portrait"),
        drawn_sheets.symbol_sheet(),
    )


def read(data: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(data))


def test_each_page_has_the_size_of_its_sheet(pack: tuple[SheetLayout, ...]) -> None:
    pages = read(write_pdf_pages(pack)).pages
    sizes = [
        (float(p.mediabox.width) * 25.4 / 72, float(p.mediabox.height) * 25.4 / 72) for p in pages
    ]
    expected = [(420, 297), (297, 210), (210, 297), (420, 297)]
    assert np.allclose(sizes, expected, atol=0.01)


def test_all_text_can_be_searched(pack: tuple[SheetLayout, ...]) -> None:
    first, _, third, _ = (page.extract_text() for page in read(write_pdf_pages(pack)).pages)
    for words in (
        "DB1 Kitchen & utility",
        "W12 3c × 2.5 mm²",
        "Zs ≤ 1.37 Ω",
        "→ 02/B2",
        "kWh",
        "3~",
    ):
        assert words in first
    assert "Schedule 03" in third


def fonts_of(reader: pypdf.PdfReader) -> Iterator[Any]:
    for page in reader.pages:
        fonts = page["/Resources"].get("/Font", {})  # type: ignore[attr-defined]
        for font in fonts.values():
            full = font.get_object()
            for inner in full.get("/DescendantFonts", [full]):
                yield full["/BaseFont"], inner.get_object()


def test_every_font_is_an_embedded_subset_of_ours(pack: tuple[SheetLayout, ...]) -> None:
    data = write_pdf_pages(pack)
    found = list(fonts_of(read(data)))
    assert {str(name).partition("+")[2] for name, _ in found} == {
        "DejaVuSansCondensed",
        "DejaVuSansCondensed-Bold",
    }
    for _, font in found:
        assert "/FontFile2" in font["/FontDescriptor"].get_object()
    assert b"Helvetica" not in data


def test_same_bytes_twice(pack: tuple[SheetLayout, ...]) -> None:
    assert write_pdf_pages(pack) == write_pdf_pages(pack)


def test_a_sign_the_font_lacks_stops_the_writing(example: SheetLayout) -> None:
    item = Item("odd", "text", (Text(Point(50, 50), "窯", 2.5),))
    with pytest.raises(MissingGlyphError):
        write_pdf_pages([replace(example, items=(item,))])


def test_a_pdf_without_sheets_is_refused() -> None:
    with pytest.raises(OutputError, match="no sheets"):
        write_pdf_pages([])


def from_svg(sheet: SheetLayout) -> Image.Image:
    return Image.open(io.BytesIO(write_png(write_svg(sheet), 300)))


def from_pdf(sheet: SheetLayout) -> Image.Image:
    document = pypdfium2.PdfDocument(write_pdf_pages([sheet]))
    picture: Image.Image = document[0].render(scale=300 / 72).to_pil()
    document.close()
    return picture


def difference(first: Image.Image, second: Image.Image) -> tuple[float, float]:
    """Return the mean difference (0..255), and the share of pixels far apart, at 100 an inch.

    Drawn at 300 an inch, averaged and blurred: two renderers may differ at the edges of strokes.
    """
    assert np.allclose(first.size, second.size, atol=2)
    small = (min(first.width, second.width) // 3, min(first.height, second.height) // 3)
    grey = [
        np.asarray(
            picture.convert("L")
            .crop((0, 0, 3 * small[0], 3 * small[1]))
            .resize(small, Image.Resampling.BOX)
            .filter(ImageFilter.GaussianBlur(1.5)),
            float,
        )
        for picture in (first, second)
    ]
    assert (grey[0] < 200).mean() > 0.004  # there is something to compare
    off = np.abs(grey[0] - grey[1])
    return float(off.mean()), float((off > 48).mean())


@pytest.mark.usefixtures("cairo")
@pytest.mark.parametrize("name", ["example", "symbols_on_a_sheet"])
def test_pdf_and_svg_are_one_picture(request: pytest.FixtureRequest, name: str) -> None:
    sheet = request.getfixturevalue(name)
    mean, share = difference(from_svg(sheet), from_pdf(sheet))
    assert mean < 0.25
    assert share == 0


@pytest.mark.usefixtures("cairo")
def test_the_comparison_sees_a_moved_symbol(example: SheetLayout) -> None:
    """One symbol 1 mm aside, of the whole sheet, must be more than the comparison lets pass."""
    items = tuple(
        drawn_sheets.symbol("Q1", "meter_kwh", 71, 25) if item.ident == "Q1" else item
        for item in example.items
    )
    _, share = difference(from_svg(example), from_pdf(replace(example, items=items)))
    assert share > 0.00005


def test_boxes_tell_where_items_lie(example: SheetLayout) -> None:
    boxes = item_boxes(example)
    assert set(boxes) == {item.ident for item in example.items}
    assert boxes["Q1"] == Box(70, 25, 80, 35)
    assert boxes["W01"] == Box(74.75, 34.75, 75.25, 45.25)
    assert boxes["D1 ends"].width == pytest.approx(74.25)
    assert boxes["DB1/1 cable"].y1 == 150
    assert part_box(SymbolUse("rcbo", Point(1, 2), 7)) == Box(1, 2, 8, 9)
