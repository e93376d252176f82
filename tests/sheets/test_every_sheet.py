"""What must hold on every sheet of every demo job, measured on the laid-out numbers."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from asfitted.dev.ink_on_texts import ink_on_texts
from asfitted.draw.item_boxes import part_box
from asfitted.fonts import text_width_mm
from asfitted.geometry import Box
from asfitted.layout.frame import frame_box
from asfitted.layout.sheet_layout import SymbolUse, Text, text_box

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout

    Sheets = dict[str, tuple[SheetLayout, ...]]

PLAIN = "labels/"  # the paper belongs to the labels: one line at the foot, no frame
JOBS = ("pottery-studio", "community-shed", "shop-cctv")


def texts(sheet: SheetLayout) -> list[tuple[str, str, Text]]:
    return [
        (item.kind, item.ident, part)
        for item in sheet.items
        for part in item.parts
        if isinstance(part, Text)
    ]


@pytest.mark.parametrize("job", JOBS)
def test_numbers_run_on_and_names_differ(demo_sheets: Sheets, job: str) -> None:
    sheets = demo_sheets[job]
    digits = max(2, len(str(len(sheets))))
    assert [s.number for s in sheets] == [f"{i:0{digits}d}" for i in range(1, len(sheets) + 1)]
    assert len({s.name for s in sheets}) == len(sheets)


@pytest.mark.parametrize("job", JOBS)
def test_lettering_is_never_smaller_than_it_may_be(demo_sheets: Sheets, job: str) -> None:
    # 2.5 mm for what must be read, 1.8 mm for field labels: ISO 3098 series (memory)
    for sheet in demo_sheets[job]:
        for kind, ident, text in texts(sheet):
            least = 1.8 if kind == "frame-label" else 2.5
            assert text.cap_mm >= least, f"{sheet.name} {ident}: {text.text}"
        heights = {t.cap_mm for kind, _, t in texts(sheet) if kind != "frame-label"}
        assert len(heights) <= 4


@pytest.mark.parametrize("job", JOBS)
def test_no_text_stands_on_another(demo_sheets: Sheets, job: str) -> None:
    for sheet in demo_sheets[job]:
        boxes = [
            (text_box(t, text_width_mm(t.text, t.cap_mm, bold=t.bold)), ident, t.text)
            for _, ident, t in texts(sheet)
        ]
        boxes.sort(key=lambda b: b[0].x0)
        for i, (one, ident, words) in enumerate(boxes):
            for other, other_ident, other_words in boxes[i + 1 :]:
                if other.x0 > one.x1:
                    break
                meet = one.grown(-0.05).meets(other.grown(-0.05))
                assert not meet, f"{sheet.name}: {ident} {words!r} on {other_ident} {other_words!r}"


@pytest.mark.parametrize("job", JOBS)
def test_no_ink_runs_through_words(demo_sheets: Sheets, job: str) -> None:
    for sheet in demo_sheets[job]:
        assert ink_on_texts(sheet.items) == [], sheet.name


@pytest.mark.parametrize("job", JOBS)
def test_everything_but_the_frame_lies_inside_the_frame(demo_sheets: Sheets, job: str) -> None:
    for sheet in demo_sheets[job]:
        frame = frame_box(sheet.paper).grown(0.3)
        if sheet.key.startswith(PLAIN):
            frame = Box(0.0, 0.0, *sheet.size_mm).grown(-5.0)  # what a printer leaves blank
        for item in sheet.items:
            if item.ident.startswith("frame"):
                continue
            for part in item.parts:
                assert frame.holds(part_box(part)), f"{sheet.name}: {item.ident}"


@pytest.mark.parametrize("job", JOBS)
def test_the_legend_is_exactly_what_is_used(demo_sheets: Sheets, job: str) -> None:
    for sheet in demo_sheets[job]:
        used: set[str] = set()
        explained: set[str] = set()
        for item in sheet.items:
            names = {p.name for p in item.parts if isinstance(p, SymbolUse)}
            (explained if item.ident.startswith("legend:") else used).update(names)
        if "single-line-diagram" in sheet.name or "distribution-overview" in sheet.name:
            continue  # these share one legend: tests/layout/single_line looks at the set
        if explained:
            assert used == explained, sheet.name
        elif sheet.section == "Drawings" and "elevation" not in sheet.name:
            assert not used, f"{sheet.name} uses {used} without a legend"


@pytest.mark.parametrize("job", JOBS)
def test_every_sheet_carries_frame_title_and_caution(demo_sheets: Sheets, job: str) -> None:
    for sheet in demo_sheets[job]:
        framed = [] if sheet.key.startswith(PLAIN) else ["frame"]
        assert [i.ident for i in sheet.items if i.kind == "frame"] == framed
        said = " ".join(t.text for _, ident, t in texts(sheet) if ident.startswith("title-block"))
        assert "not a certificate" in said
        assert f"{int(sheet.number)} of {len(demo_sheets[job])}" in said


@pytest.mark.parametrize("job", JOBS)
def test_items_have_names_of_their_own(demo_sheets: Sheets, job: str) -> None:
    for sheet in demo_sheets[job]:
        idents = [item.ident for item in sheet.items]
        assert len(idents) == len(set(idents)), sheet.name


@pytest.mark.parametrize("job", JOBS)
def test_wires_carry_a_net_and_nothing_else_is_called_a_wire(demo_sheets: Sheets, job: str) -> None:
    for sheet in demo_sheets[job]:
        for item in sheet.items:
            if item.kind == "wire":
                assert item.net, f"{sheet.name}: {item.ident}"


@pytest.mark.parametrize("job", JOBS)
def test_references_to_sheets_name_sheets_that_exist(demo_sheets: Sheets, job: str) -> None:
    numbers = {s.number for s in demo_sheets[job]}
    for sheet in demo_sheets[job]:
        for _, ident, text in texts(sheet):
            for number in re.findall(r"\bsheet (\d\d)\b", text.text):
                assert number in numbers, f"{sheet.name} {ident}: {text.text}"


def test_the_pottery_set_holds_every_kind_of_sheet(demo_sheets: Sheets) -> None:
    names = " ".join(s.name for s in demo_sheets["pottery-studio"])
    for wanted in (
        "single-line-diagram",
        "key-plan",
        "elevation-a",
        "elevation-b",
        "elevation-c",
        "elevation-d",
        "data-diagram",
        "door-chart-db1",
        "door-chart-db2",
        "cable-schedule",
        "cut-list",
    ):
        assert wanted in names


def test_a_cctv_only_job_has_no_power_sheets(demo_sheets: Sheets) -> None:
    names = " ".join(s.name for s in demo_sheets["shop-cctv"])
    assert "data-diagram" in names
    assert "single-line" not in names
    assert "door-chart" not in names
