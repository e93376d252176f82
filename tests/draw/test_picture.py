"""A picture on a sheet: embedded in SVG and PDF, the same bytes each time, in proportion."""

from __future__ import annotations

import base64
import io

import pypdfium2
import pytest
from PIL import Image

from asfitted.draw.item_boxes import item_boxes
from asfitted.draw.pdf import write_pdf_pages
from asfitted.draw.recorder import record
from asfitted.draw.svg import write_svg
from asfitted.geometry import Box
from asfitted.layout.firm_mark import mark_box, mark_item
from asfitted.layout.sheet_layout import Item, Path, Picture, SheetLayout
from asfitted.spec.logo import Logo, LogoOutline

BOX = Box(50, 40, 90, 60)


def png() -> bytes:
    out = io.BytesIO()
    Image.new("RGB", (20, 10), (0, 0, 0)).save(out, "PNG")
    return out.getvalue()


def sheet(*items: Item) -> SheetLayout:
    return SheetLayout("01", "J1-01-P01-x", "X", "A4", items)


PICTURED = sheet(Item("mark", "outline", (Picture(png(), BOX),)))


def test_the_svg_holds_the_file_itself() -> None:
    svg = write_svg(PICTURED)
    assert "data:image/png;base64," + base64.b64encode(png()).decode() in svg
    assert "http" not in svg.replace("http://www.w3.org", "")
    assert svg == write_svg(PICTURED)


def test_the_pdf_shows_it_in_its_place_and_is_the_same_each_time() -> None:
    pdf = write_pdf_pages([PICTURED])
    assert pdf == write_pdf_pages([PICTURED])
    image = pypdfium2.PdfDocument(pdf)[0].render(scale=2 * 25.4 / 72).to_pil().convert("L")
    # two dots to the mm: dark inside the box, paper outside
    assert image.getpixel((140, 100)) < 20
    assert image.getpixel((90, 100)) > 230
    assert image.getpixel((190, 100)) > 230


def test_boxes_and_records_know_it() -> None:
    assert item_boxes(PICTURED)["mark"] == BOX
    assert "picture 50,40 90,60" in record(PICTURED)[1]


@pytest.mark.parametrize(("width", "height"), [(30, 10), (10, 30), (10, 10)])
def test_a_mark_keeps_its_proportion_and_stays_in_its_room(width: float, height: float) -> None:
    room = Box(10, 10, 24, 17)
    box = mark_box(Logo("m.svg", width, height), room)
    assert room.grown(1e-9).holds(box)
    assert box.width / box.height == pytest.approx(width / height)
    assert box.x1 == room.x1


def test_outlines_are_drawn_as_lines_and_fills() -> None:
    shape = LogoOutline(((0, 0), (20, 0), (20, 10)), closed=True, fill="grey")
    item = mark_item("mark", Logo("m.svg", 20, 10, outlines=(shape,)), BOX)
    (path,) = item.parts
    assert isinstance(path, Path)
    assert path.fill == "grey"
    assert path.points[2] == (90, 60)
