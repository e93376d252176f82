"""One truth: what stands on one sheet stands on every other, in the SVG and in the PDF.

Model and sheets are compared place by place (``told_figures.py``), so that two sheets cannot
disagree; then SVG and PDF are compared with the sheets word by word, the PDF in two readers.
"""

from __future__ import annotations

import io
import re
import subprocess
from collections import Counter
from dataclasses import replace
from shutil import which
from types import MappingProxyType
from typing import TYPE_CHECKING

import defusedxml.ElementTree  # type: ignore[import-untyped]
import pypdfium2
import pytest
from pypdf import PdfReader
from told_figures import CLAIMS, length_of, said, size_of, stands_in, words_by_ident

from asfitted.draw.svg import SvgOptions, write_svg
from asfitted.geometry import Point
from asfitted.layout.frame import zone_of
from asfitted.layout.sheet_layout import Text
from asfitted.pack.pdf import pack_pdf
from asfitted.pack.readers import sheets_for

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path
    from xml.etree.ElementTree import Element  # the type alone; reading is defusedxml's

    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

    Sheets = tuple[SheetLayout, ...]
    Jobs = dict[str, tuple[Model, Sheets]]
    Pdfs = dict[str, bytes]

SMALL = ("pottery-studio", "community-shed", "shop-cctv")
EVERY = (*SMALL, "community-hall", "two-storey-office")
NO_POWER = {"shop-cctv"}
MM = 72 / 25.4
NEAR_MM = 5.0
#: A reference to a place: "sheet 016", "sheet 14/B7", "sheets 012, zone A3".
REFERENCE = re.compile(r"\bsheets? (\d{2,})(?:(?:/|, zone )([A-Z]\d+))?")
#: A callout tells besides where a thing is drawn, and leads to the chart of its board.
LEADS_TO_ITS_CHART = r"(?:.*:)?callout:|sheets:"


def wrong(name: str, model: Model, sheets: Sheets) -> list[str]:
    return [
        f"{claim.place}: {claim.wanted!r} is not in {claim.words[:200]!r}"
        for claim in CLAIMS[name](model, sheets)
        if not stands_in(claim.wanted, claim.words)
    ]


@pytest.fixture(scope="module")
def pdfs(every_job: Jobs) -> Pdfs:
    """Return the handover of each small job."""
    return {
        name: pack_pdf(sheets_for(every_job[name][1]), every_job[name][0].installation.job)
        for name in SMALL
    }


@pytest.mark.parametrize("job", EVERY)
@pytest.mark.parametrize("name", CLAIMS)
def test_a_sheet_says_what_the_model_says(every_job: Jobs, job: str, name: str) -> None:
    model, sheets = every_job[job]
    assert not wrong(name, model, sheets)


@pytest.mark.parametrize("name", CLAIMS)
def test_every_kind_of_claim_is_made_of_some_job(every_job: Jobs, name: str) -> None:
    made = sum(1 for job in SMALL for _ in CLAIMS[name](*every_job[job]))
    assert made >= 4


SPEAK_OF_LENGTH = ("single-line diagram", "cable schedule", "door charts", "calculations")


@pytest.mark.parametrize("name", [*SPEAK_OF_LENGTH, "cards, cut list, labels"])
def test_a_length_changed_in_the_model_alone_is_noticed(every_job: Jobs, name: str) -> None:
    model, sheets = every_job["community-shed"]
    route = model.results.routes["W04"]
    longer = replace(route, length_m=route.length_m + 0.3, cut_m=route.cut_m + 0.3)
    routes = MappingProxyType({**model.results.routes, "W04": longer})
    other = replace(model, results=replace(model.results, routes=routes))
    assert wrong(name, other, sheets)


SPEAK_OF_SIZE = (*SPEAK_OF_LENGTH, "cards, cut list, labels", "cross-sections")


@pytest.mark.parametrize("name", SPEAK_OF_SIZE)
def test_a_size_changed_in_the_model_alone_is_noticed(every_job: Jobs, name: str) -> None:
    model, sheets = every_job["community-shed"]
    cable = model.results.cables["W04"]
    thicker = replace(cable, words=cable.words.replace("4/1.5", "6/2.5"))
    assert thicker != cable
    cables = MappingProxyType({**model.results.cables, "W04": thicker})
    assert wrong(name, replace(model, results=replace(model.results, cables=cables)), sheets)


SPEAK_OF_RATING = ("single-line diagram", "door charts", "labels of ways, test sheets")


@pytest.mark.parametrize("name", SPEAK_OF_RATING)
def test_a_rating_changed_in_the_model_alone_is_noticed(every_job: Jobs, name: str) -> None:
    model, sheets = every_job["community-shed"]
    circuit = model.installation.circuits["CU1/2"]
    other = replace(circuit, device=replace(circuit.device, rating_a=20.0))
    circuits = MappingProxyType({**model.installation.circuits, "CU1/2": other})
    installation = replace(model.installation, circuits=circuits)
    assert wrong(name, replace(model, installation=installation), sheets)


def test_a_spacing_changed_in_the_model_alone_is_noticed(every_job: Jobs) -> None:
    model, sheets = every_job["pottery-studio"]
    take = model.results.take_off
    assert take is not None
    closer = tuple(replace(f, spacing_mm=1250) if f.subject == "T2" else f for f in take.fixings)
    results = replace(model.results, take_off=replace(take, fixings=closer))
    found = wrong("supports", replace(model, results=results), sheets)
    assert {place.partition(":")[0] for place in found} >= {"strip T2", "elevations T2", "brief T2"}


def test_a_least_cpc_changed_in_the_model_alone_is_noticed(every_job: Jobs) -> None:
    model, sheets = every_job["pottery-studio"]
    circuit = model.results.circuits["DB1/7TP"]
    assert circuit.least_cpc is not None
    other = replace(circuit, least_cpc=replace(circuit.least_cpc, cables=("W09",)))
    circuits = MappingProxyType({**model.results.circuits, "DB1/7TP": other})
    results = replace(model.results, circuits=circuits)
    assert wrong("test sheets", replace(model, results=results), sheets)


@pytest.mark.parametrize("tag", ["Q4", "M1"])
def test_a_relay_changed_in_the_model_alone_is_noticed(every_job: Jobs, tag: str) -> None:
    model, sheets = every_job["pottery-studio"]
    point = replace(model.installation.points[tag], overload_a=4.7)
    points = MappingProxyType({**model.installation.points, tag: point})
    other = replace(model, installation=replace(model.installation, points=points))
    found = {place.partition(":")[0] for place in wrong("starters", other, sheets)}
    told = ("diagram", "schedule", "checks", "order of work")
    assert found >= {f"{where} {tag}" for where in told}


@pytest.mark.parametrize("job", EVERY)
def test_no_sheet_names_a_cable_that_the_job_has_not(every_job: Jobs, job: str) -> None:
    model, sheets = every_job[job]
    tags = set(model.installation.cables)
    heads = {re.match(r"[A-Z]+", tag)[0] for tag in tags}  # type: ignore[index]
    named = re.compile(rf"(?<![\w/-])(?:{'|'.join(sorted(heads))})\d\d(?:-\d+)?(?![\w/-])")
    seen = set()
    for sheet in sheets:
        for item in sheet.items:
            if not item.ident.startswith(("title-block", "frame")):
                found = set(named.findall(said(item)))
                assert found <= tags, f"sheet {sheet.number} {item.ident}: {found - tags}"
                seen |= found
    assert seen == tags, "a cable stands on no sheet"


@pytest.mark.parametrize("job", EVERY)
def test_words_that_name_a_sheet_and_zone_lead_there(every_job: Jobs, job: str) -> None:
    _, sheets = every_job[job]
    by_number = {sheet.number: sheet for sheet in sheets}
    zones = 0
    for sheet in sheets:
        for item in sheet.items:
            number, _, target = item.link.partition("#")
            named = REFERENCE.findall(said(item))
            if not (item.link and named) or re.match(LEADS_TO_ITS_CHART, item.ident):
                continue
            where = f"sheet {sheet.number} {item.ident}: {said(item)!r}"
            assert number in {n for n, _ in named}, where
            for n, zone in named:
                if zone and n == number and not target.endswith("view:title"):
                    assert zone in _zones(by_number[n], target), where
                    zones += 1
    assert zones or job in {"community-shed", *NO_POWER}


def _zones(sheet: SheetLayout, target: str) -> set[str]:
    """Return every zone that an item lies in; of a corner flag, the zones of the corner."""
    target = re.sub(r"(^|:)flag:", r"\1corner:", target)
    points = [
        point
        for item in sheet.items
        if item.ident == target
        for part in item.parts
        for point in getattr(part, "points", ()) or (getattr(part, "at", None),)
        if point is not None
    ]
    near = (-NEAR_MM, 0.0, NEAR_MM)  # an arrow may stand just over the line between two zones
    return {
        zone_of(sheet.paper, Point(p.x + dx, p.y + dy))
        for p in points
        for dx in near
        for dy in near
    }


@pytest.mark.parametrize("job", EVERY)
def test_the_drawing_list_says_of_each_sheet_what_its_title_block_says(
    every_job: Jobs, job: str
) -> None:
    model, sheets = every_job[job]
    rows = words_by_ident(sheets, "drawing-list")
    about = model.installation.job
    issue = f"Date of every sheet: {about.date}. Status: {about.status}."
    assert any(stands_in(issue, words) for words in rows.values())
    row = ""
    for sheet in sheets:
        row = rows.get(f"sheets:{sheet.key}", row)  # a series is told in the row of its first
        first, last = re.match(r"(\d+)(?: to (\d+))?", row).groups()
        assert int(first) <= int(sheet.number) <= int(last or first), row
        for wanted in (sheet.paper[:2], about.revision):
            assert stands_in(wanted, row), f"{wanted!r} is not in {row!r}"
        if last is None:
            assert stands_in(sheet.title, row), f"{sheet.title!r} is not in {row!r}"
        block = {i.ident: said(i) for i in sheet.items if i.ident.startswith("title-block")}
        assert block["title-block:number"].endswith(f"-{sheet.number}")
        assert stands_in(about.revision, block["title-block:revision, sheet"])
        assert block["title-block:status"] == about.status


@pytest.mark.parametrize("job", SMALL)
def test_the_svg_of_each_sheet_says_what_was_laid_out(every_job: Jobs, job: str) -> None:
    for sheet in every_job[job][1]:
        root = defusedxml.ElementTree.fromstring(write_svg(sheet, SvgOptions(embed_fonts=False)))
        drawn = {
            group.get("data-id"): " ".join("".join(t.itertext()) for t in _texts(group))
            for group in root.iter("{http://www.w3.org/2000/svg}g")
            if group.get("data-id")
        }
        for item in sheet.items:
            words = " ".join(p.text for p in item.parts if isinstance(p, Text))
            assert stands_in_order(words, drawn[item.ident]), f"{sheet.name} {item.ident}"


def _texts(group: Element) -> list[Element]:
    return list(group.iter("{http://www.w3.org/2000/svg}text"))


def stands_in_order(words: str, drawn: str) -> bool:
    """Tell whether all words come in order; signs may have letters of their own between."""
    left = iter(drawn.split())
    return all(word in left for word in words.split())


@pytest.mark.parametrize("job", SMALL)
def test_the_pages_say_what_was_laid_out(every_job: Jobs, pdfs: Pdfs, job: str) -> None:
    document = pypdfium2.PdfDocument(pdfs[job])
    pages = [page.get_textpage().get_text_range() for page in document]
    document.close()
    _compare_words(pages, sheets_for(every_job[job][1]))


def test_a_second_reader_reads_the_same(every_job: Jobs, pdfs: Pdfs, tmp_path: Path) -> None:
    if which("pdftotext") is None:
        pytest.skip("NOT READ with a second reader: pdftotext is not installed")
    path = tmp_path / "pack.pdf"
    path.write_bytes(pdfs["community-shed"])
    done = subprocess.run(
        ["pdftotext", "-layout", str(path), "-"], capture_output=True, text=True, check=True
    )
    pages = done.stdout.split("\f")
    assert pages.pop() == ""
    for page, sheet in zip(pages, sheets_for(every_job["community-shed"][1]), strict=True):
        # in columns this reader may part words or run them together, but it loses no sign
        signs, words = Counter("".join(page.split())), "".join(page.split())
        laid = [word for item in sheet.items for word in said(item).split()]
        assert not Counter("".join(laid)) - signs, sheet.name
        turned = {w for t in _turned(sheet) for w in t.split()}
        lost = {word for word in laid if len(word) > 2 and word not in words} - turned
        assert not lost, f"{sheet.name}: {lost}"


def _turned(sheet: SheetLayout) -> list[str]:
    return [p.text for i in sheet.items for p in i.parts if isinstance(p, Text) and p.turned]


def _compare_words(pages: list[str], sheets: Sequence[SheetLayout]) -> None:
    assert len(pages) == len(sheets)
    for page, sheet in zip(pages, sheets, strict=True):
        laid = Counter(w for item in sheet.items for w in _unbroken(said(item)))
        lost = laid - Counter(_unbroken(page))
        assert not lost, f"{sheet.name}: {dict(lost)}"


def _unbroken(words: str) -> list[str]:
    """Return words without the hyphens at which lines were broken (this reader joins them)."""
    return re.sub(r"[-\ufffe]\s*", "", words).split()


@pytest.mark.parametrize("job", SMALL)
def test_pages_are_the_listed_sheets_at_their_sizes_and_links_lead_to_them(
    every_job: Jobs, pdfs: Pdfs, job: str
) -> None:
    sheets = sheets_for(every_job[job][1])
    reader = PdfReader(io.BytesIO(pdfs[job]))
    assert reader.page_labels == [f"Sheet {sheet.number}" for sheet in sheets]
    place = {
        page.indirect_reference.idnum: i
        for i, page in enumerate(reader.pages)
        if page.indirect_reference
    }
    led = set()
    for page, sheet in zip(reader.pages, sheets, strict=True):
        size = float(page.mediabox.width) / MM, float(page.mediabox.height) / MM
        assert size == pytest.approx(sheet.size_mm, abs=0.1), sheet.name
        wanted = sorted(
            item.link.partition("#")[0]
            for item in sheet.items
            if item.link.partition("#")[0] in {s.number for s in sheets}
        )
        links = [a.get_object() for a in page.get("/Annots", [])]
        found = sorted(sheets[place[link["/A"]["/D"][0].idnum]].number for link in links)
        assert found == wanted, sheet.name
        led |= set(found)
    rows = words_by_ident(sheets, "drawing-list")
    firsts = {sheet.number for sheet in sheets if f"sheets:{sheet.key}" in rows}
    assert firsts <= led, "a sheet, or a series of them, that nothing leads to"
    assert len({sheet.paper for sheet in sheets}) == 3, "A3, A4 and upright A4 are mixed"


def test_the_helpers_say_size_and_length_as_the_trade_does(every_job: Jobs) -> None:
    model, _ = every_job["community-shed"]
    cable = model.installation.cables["W05"]
    # specs/community-shed.yaml: three-core armoured to the floodlight; its drawn way is
    # 13.075 along T1 + 0.2 rise + 0.3 through the wall + 0.3 change of level + 0.6 tail = 14.475
    assert size_of(model, cable) == "3c × 1.5 mm² XLPE/SWA/PVC"
    assert length_of(model, cable) == "14.5 m"
