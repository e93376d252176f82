"""The bound PDF: pages, sizes, bookmarks, labels, text, embedded fonts; the files around it."""

from __future__ import annotations

import csv
import io
import json
import subprocess
from pathlib import Path
from shutil import which
from typing import TYPE_CHECKING, Any

import pypdfium2
import pytest
from pypdf import PdfReader

from asfitted.cli import main
from asfitted.layout.figures import metres, rounded
from asfitted.pack.readers import sheets_for

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout

SPECS = Path(__file__).parent.parent.parent / "specs"
MM = 72 / 25.4


@pytest.fixture(scope="module")
def pack(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("pack")
    assert main(["pack", str(SPECS / "pottery-studio.yaml"), "-o", str(folder)]) == 0
    return folder


@pytest.fixture(scope="module")
def reader(pack: Path) -> PdfReader:
    files = list(pack.glob("*.pdf"))
    assert [f.name for f in files] == ["J2631-P01-For-construction.pdf"]
    return PdfReader(files[0])


def test_every_sheet_of_the_handover_is_a_page_of_its_own_size(
    reader: PdfReader, demo_sheets: dict[str, tuple[SheetLayout, ...]]
) -> None:
    sheets = sheets_for(demo_sheets["pottery-studio"])
    assert len(reader.pages) == len(sheets)
    for page, sheet in zip(reader.pages, sheets, strict=True):
        size = float(page.mediabox.width) / MM, float(page.mediabox.height) / MM
        assert size == pytest.approx(sheet.size_mm, abs=0.1), sheet.name
    sizes = {round(float(p.mediabox.width) / MM) for p in reader.pages}
    assert {420, 297, 210} <= sizes, "A3 drawings, A4 tables and upright A4 pages are mixed"


def test_bookmarks_and_page_labels_name_every_sheet(
    reader: PdfReader, demo_sheets: dict[str, tuple[SheetLayout, ...]]
) -> None:
    titles: list[str] = []

    def walk(items: list[Any]) -> None:
        for item in items:
            if isinstance(item, list):
                walk(item)
            else:
                titles.append(item.title)

    walk(reader.outline)
    sheets = sheets_for(demo_sheets["pottery-studio"])
    parts = list(dict.fromkeys(sheet.section for sheet in sheets))
    assert parts[0] == "Front"
    assert [t for t in titles if not t[:2].isdigit()] == parts
    assert sum(t[:2].isdigit() for t in titles) == len(reader.pages)
    assert reader.page_labels == [f"Sheet {sheet.number}" for sheet in sheets]


def test_text_is_searchable_in_two_readers(pack: Path, reader: PdfReader) -> None:
    by_pypdf = "\n".join(page.extract_text() for page in reader.pages)
    document = pypdfium2.PdfDocument(next(pack.glob("*.pdf")))
    by_pdfium = "\n".join(page.get_textpage().get_text_range() for page in document)
    document.close()
    for text in (by_pypdf, by_pdfium):
        for wanted in ("DB1", "W05", "mm²", "Ω", "Design aid, not a certificate"):
            assert wanted in text


def test_all_fonts_are_embedded(reader: PdfReader) -> None:
    seen = 0
    for page in reader.pages:
        for font in page["/Resources"]["/Font"].values():
            descriptor = font.get_object().get("/FontDescriptor")
            assert descriptor is not None, font
            assert "/FontFile2" in descriptor
            seen += 1
    assert seen


def test_qpdf_finds_no_fault(pack: Path) -> None:
    if which("qpdf") is None:
        pytest.skip("qpdf is not installed")
    done = subprocess.run(
        ["qpdf", "--check", str(next(pack.glob("*.pdf")))],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr


def test_schedules_and_figures_agree(pack: Path) -> None:
    figures = json.loads((pack / "design.json").read_text())["figures"]
    rows = list(csv.DictReader(io.StringIO((pack / "schedules/cable-schedule.csv").read_text())))
    by_tag = {row["Cable"]: row for row in rows}
    assert by_tag.keys() >= figures["cables"].keys()
    for tag, cable in figures["cables"].items():
        assert by_tag[tag]["Cable type"].endswith(cable["words"])
        capacity = rounded(cable["capacity_a"], 1)
        told = f"not checked (free air {capacity})" if cable["capacity_doubt"] else capacity
        assert by_tag[tag]["Iz A"] == told
        assert by_tag[tag]["Length"].startswith(metres(figures["routes"][tag]["length_m"]))


def test_every_number_in_the_figures_has_its_unit_in_its_key(pack: Path) -> None:
    units = ("_a", "_m", "_mm", "_mm2", "_v", "_pct", "_ohm", "_ka", "_s", "_a2s", "_w", "_kg_m")
    units += ("_px_m", "_deg", "_count", "_circuits", "_used", "_total", "_m_", "_h", "_tb")
    free = {
        "value",
        "used",
        "available",
        "x",
        "y",
        "z",
        "needed",
        "to_order",
        "left_of_lengths",
    }  # these stand beside a unit of their own

    def walk(node: object, key: str) -> None:
        if isinstance(node, dict):
            for name, part in node.items():
                walk(part, name)
        elif isinstance(node, list):
            for part in node:
                walk(part, key)
        elif isinstance(node, float):
            named = key in free or key in {"start", "end", "at"} or key.endswith(units)
            assert named, f"{key}: {node} has no unit"

    walk(json.loads((pack / "design.json").read_text())["figures"], "")
