"""The SVG is well formed, self-contained, the same each time, and passes an outside measurer."""

from __future__ import annotations

import base64
import io
import os
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

import defusedxml.ElementTree  # type: ignore[import-untyped]
import pytest
from fontTools.ttLib import TTFont

from asfitted.draw.svg import SvgOptions, font_face_css, write_svg, xml_id
from asfitted.errors import MissingGlyphError, OutputError
from asfitted.fonts import FAMILY, FILES, metrics
from asfitted.geometry import Point
from asfitted.layout.sheet_layout import Circle, Item, SheetLayout, Stroke, Text

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element

SVG = "{http://www.w3.org/2000/svg}"
#: The measurer of drawings is a program of its own; point this at it to run it here too.
MEASURER = Path(os.environ.get("ASFITTED_MEASURER", "measure_drawing.py"))


@pytest.fixture
def root(example: SheetLayout) -> Element:
    return defusedxml.ElementTree.fromstring(write_svg(example))  # type: ignore[no-any-return]


def group(root: Element, ident: str) -> Element:
    found = [g for g in root.iter(f"{SVG}g") if g.get("data-id") == ident]
    assert len(found) == 1
    return found[0]


def test_page_is_in_mm(root: Element) -> None:
    assert (root.get("width"), root.get("height")) == ("420mm", "297mm")
    assert root.get("viewBox") == "0 0 420 297"


def test_every_item_is_a_group_with_its_identity(root: Element, example: SheetLayout) -> None:
    groups = [g for g in root.iter(f"{SVG}g") if g.get("data-kind")]
    told = [(g.get("data-id"), g.get("data-kind"), g.get("data-net", "")) for g in groups]
    assert told == [(item.ident, item.kind, item.net) for item in example.items]
    ids = [element.get("id") for element in root.iter() if element.get("id")]
    assert len(set(ids)) == len(ids)


def test_titles_show_on_hover_and_links_are_kept(root: Element) -> None:
    title = group(root, "Q1").find(f"{SVG}title")
    assert title is not None
    assert title.text == "Energy meter (kilowatt-hours)"
    assert group(root, "label").get("data-link") == "02#Q1"


def test_links_become_anchors_when_addresses_are_known(example: SheetLayout) -> None:
    options = SvgOptions(href=lambda link: f"other.svg#{link.partition('#')[2]}")
    linked = defusedxml.ElementTree.fromstring(write_svg(example, options))
    anchor = next(linked.iter(f"{SVG}a"))
    assert anchor.get("{http://www.w3.org/1999/xlink}href") == "other.svg#Q1"
    assert anchor[0].get("data-id") == "label"


def test_a_symbol_is_declared_once_for_each_size_and_width(root: Element) -> None:
    declared = [s.get("id") for s in root.find(f"{SVG}defs") or () if s.tag == f"{SVG}symbol"]
    assert declared.count("sym-rcbo-10-35") == 1
    assert "sym-rcbo-7-25" in declared
    uses = [u.get("{http://www.w3.org/1999/xlink}href") for u in root.iter(f"{SVG}use")]
    assert set(uses) == {f"#{name}" for name in declared}


def test_turned_symbols_and_mirrored_ones_carry_a_transform(root: Element) -> None:
    turned = group(root, "turned 90").find(f"{SVG}use")
    mirrored = group(root, "mirrored").find(f"{SVG}use")
    assert turned is not None
    assert mirrored is not None
    assert turned.get("transform") == "translate(290 110) rotate(90 5 5)"
    assert mirrored.get("transform") == "translate(350 110) translate(10 0) scale(-1 1)"


def test_text_is_real_text_at_its_capital_height(root: Element) -> None:
    text = group(root, "DB1 tag").find(f"{SVG}text")
    assert text is not None
    assert text.text == "DB1 Kitchen & utility"
    assert text.get("font-weight") == "bold"
    size = float(text.get("font-size", "0"))
    assert size * metrics().cap_height == pytest.approx(5, abs=0.001)
    turned = group(root, "DB1/1 cable").find(f"{SVG}text")
    assert turned is not None
    assert turned.get("transform") == "rotate(-90 72.5 150)"


def test_wide_spaces_stay_wide(root: Element) -> None:
    text = group(root, "signs").find(f"{SVG}text")
    assert text is not None
    assert text.get("{http://www.w3.org/XML/1998/namespace}space") == "preserve"
    assert "Ω  Δ" in (text.text or "")


def test_dashes_scale_with_the_line(root: Element) -> None:
    """Source: ISO 128-2 (memory): dash 12 d, gap 3 d, long dash 24 d, dot no more than 0.5 d."""
    line = group(root, "far").find(f"{SVG}polyline")
    assert line is not None
    assert line.get("stroke-dasharray") == "3,0.75"
    data = group(root, "D1").find(f"{SVG}polyline")
    assert data is not None
    assert data.get("stroke-dasharray") == "8.4,1.05,0.175,1.05,0.175,1.05"


def embedded_fonts(svg: str) -> list[TTFont]:
    found = re.findall(r"data:font/ttf;base64,([A-Za-z0-9+/=]+)", svg)
    return [TTFont(io.BytesIO(base64.b64decode(data))) for data in found]


def test_embedded_fonts_hold_the_signs_used_and_the_usual_ones(example: SheetLayout) -> None:
    regular, bold = embedded_fonts(write_svg(example))
    assert set("ΩΔ≤→²×") <= {chr(code) for code in regular.getBestCmap()}
    assert set("DB1 Kitchen & utility") <= {chr(code) for code in bold.getBestCmap()}
    assert len(regular.getBestCmap()) < 140  # of some six thousand
    assert regular["name"].getDebugName(1) == FAMILY
    assert "GPOS" not in regular  # kerning would make the text narrower than layout measured


def test_bold_is_left_out_where_nothing_is_bold(example: SheetLayout) -> None:
    plain = replace(example, items=tuple(i for i in example.items if i.ident != "DB1 tag"))
    assert len(embedded_fonts(write_svg(plain))) == 1


def test_fonts_can_be_shared_by_a_page_of_sheets(example: SheetLayout) -> None:
    shared = SvgOptions(id_prefix="s01-", characters=("AB", ""))
    assert {chr(c) for c in embedded_fonts(write_svg(example, shared))[0].getBestCmap()} == set(
        "AB "
    )
    bare = write_svg(example, SvgOptions(id_prefix="s01-", embed_fonts=False))
    assert "font-face" not in bare
    assert 'id="s01-sym-rcbo-10-35"' in bare
    assert 'xlink:href="#s01-sym-rcbo-10-35"' in bare
    assert font_face_css("AB", "").count("@font-face") == 1


def test_numbers_are_plain(example: SheetLayout) -> None:
    odd = Circle(Point(-0.0001, 1e-9), 1 / 3, Stroke(0.35))
    svg = write_svg(replace(example, items=(*example.items, Item("odd", "dim", (odd,)))))
    drawn = re.sub(r"<style.*?</style>", "", svg, flags=re.DOTALL)
    numbers = re.findall(r'(?<=[ "(,])-?\d[\d.]*(?:e-?\d+)?(?=[ ")mm,])', drawn)
    assert len(numbers) > 500
    assert not [
        n for n in numbers if "e" in n or n in {"-0", "-0.0"} or len(n.partition(".")[2]) > 3
    ]
    assert 'r="0.333"' in svg
    assert "nan" not in drawn.lower().replace("finance", "")


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_a_length_that_is_no_number_stops_the_drawing(example: SheetLayout, value: float) -> None:
    bad = Item("bad", "dim", (Circle(Point(value, 1), 1, None),))
    with pytest.raises(OutputError, match="not a number"):
        write_svg(replace(example, items=(bad,)))


def test_two_items_of_one_name_stop_the_drawing(example: SheetLayout) -> None:
    with pytest.raises(OutputError, match="two items named 'frame'"):
        write_svg(replace(example, items=(example.items[0], example.items[0])))


def test_a_sign_the_font_lacks_stops_the_drawing(example: SheetLayout) -> None:
    item = Item("odd", "text", (Text(Point(50, 50), "kiln 窯", 2.5),))
    with pytest.raises(MissingGlyphError, match=r"U\+7AAF"):
        write_svg(replace(example, items=(item,)))


@pytest.mark.parametrize("ident", ["DB1/3L2", "two words", "a_b", "Ω", '"<&'])
def test_any_tag_makes_a_legal_id_of_its_own(ident: str) -> None:
    assert re.fullmatch(r"[A-Za-z0-9._-]+", xml_id(ident))
    others = {"DB1_3L2", "two_words", "a b", "W", "q"}
    assert xml_id(ident) not in {xml_id(other) for other in others}


def test_same_bytes_in_any_process() -> None:
    code = (
        "import sys, hashlib; sys.path.insert(0, sys.argv[1]); import drawn_sheets\n"
        "from asfitted.draw.svg import write_svg\n"
        "from asfitted.draw.pdf import write_pdf_pages\n"
        "made = [drawn_sheets.example_sheet(), drawn_sheets.symbol_sheet()]\n"
        "data = ''.join(map(write_svg, made)).encode() + write_pdf_pages(made)\n"
        "print(hashlib.sha256(data).hexdigest())\n"
    )
    command = [sys.executable, "-c", code, str(Path(__file__).parent)]
    sums = [
        subprocess.run(
            command, env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True, check=True
        ).stdout
        for seed in ("0", "4242")
    ]
    assert len(sums[0]) > 60
    assert sums[0] == sums[1]


@pytest.mark.parametrize("fonts", [FILES.values(), ()], ids=["our fonts", "a viewer's fonts"])
@pytest.mark.parametrize("name", ["example", "symbols_on_a_sheet"])
def test_an_outside_measurer_finds_no_fault(
    request: pytest.FixtureRequest, tmp_path: Path, name: str, fonts: Any
) -> None:
    """The measurer checks text sizes, text over ink, wires that dangle, cross or run through."""
    if not MEASURER.is_file():
        pytest.skip("NOT MEASURED: set ASFITTED_MEASURER to the drawing measurer to run this")
    path = tmp_path / "sheet.svg"
    path.write_text(write_svg(request.getfixturevalue(name)), encoding="utf-8")
    command = [sys.executable, str(MEASURER), str(path), "--gates"]
    for font in fonts:
        command += ["--font", str(font)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    measures = {line[:24].strip(): line[25:] for line in done.stdout.splitlines()}
    assert int(measures["symbols"]) >= 17
    assert measures["min_stroke_mm"] in {"0.18", "0.25"}
    assert measures["not_measured"] == "{}"
