"""Jobs grown from seeds: what holds on every sheet of power and boards, whatever the job."""

from __future__ import annotations

import os
import subprocess
import sys
from functools import cache
from typing import TYPE_CHECKING

import pytest

from asfitted.dev.generated_jobs import generated_job
from asfitted.dev.measure_jobs import ENV, LETTERINGS, lay_out_what_can_be
from asfitted.draw.item_boxes import part_box
from asfitted.draw.svg import write_svg
from asfitted.geometry import Box
from asfitted.layout.frame import frame_box
from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Path as Line
from asfitted.layout.sheet_layout import Text
from asfitted.pipeline import check_job, model_of

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.layout.sheet_layout import SheetLayout

KINDS = ("distribution_overview", "single_line_diagram", "door_charts")
#: One board and few circuits, several boards, four levels, A4, TT, many circuits on one board.
SEEDS = (2, 4, 10, 20, 70, 80, 110, 140)


@cache
def sheets_of(seed: int, folder: Path) -> tuple[tuple[str, SheetLayout], ...]:
    spec = folder / f"{seed}.yaml"
    spec.write_text(generated_job(seed), encoding="utf-8")
    failures: list[tuple[str, str]] = []
    sheets = lay_out_what_can_be(model_of(check_job(spec)), KINDS, failures)
    assert not failures
    assert sheets
    return tuple(sheets)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("jobs")


def texts_on_texts(sheet: SheetLayout) -> list[str]:
    """Return each pair of texts that stand on one another."""
    boxes = sorted(
        (
            (box_of(part).grown(-0.1), part.text)
            for item in sheet.items
            for part in item.parts
            if isinstance(part, Text)
        ),
        key=lambda found: found[0].x0,
    )
    found = []
    for i, (box, text) in enumerate(boxes):
        for other, words in boxes[i + 1 :]:
            if other.x0 > box.x1:
                break
            if box.meets(other):
                found.append(f"{text!r} on {words!r}")
    return found


def texts_on_lines(sheet: SheetLayout) -> list[str]:
    """Return each text that a wire or a busbar runs through."""
    lines = [
        (item.ident, Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)).grown(0.2))
        for item in sheet.items
        if item.kind in ("wire", "busbar")
        for part in item.parts
        if isinstance(part, Line)
        for a, b in zip(part.points, part.points[1:], strict=False)
    ]
    return [
        f"{part.text!r} on {ident}"
        for item in sheet.items
        for part in item.parts
        if isinstance(part, Text)
        for ident, line in lines
        if line.meets(box_of(part).grown(-0.2))
    ]


def outside_the_frame(sheet: SheetLayout) -> list[str]:
    """Return each item that is not inside the frame."""
    frame = frame_box(sheet.paper).grown(0.3)
    return [
        item.ident
        for item in sheet.items
        if not item.ident.startswith("frame")
        for part in item.parts
        if not frame.holds(part_box(part))
    ]


def test_a_seed_gives_the_same_text_and_another_seed_another() -> None:
    assert generated_job(7) == generated_job(7)
    assert generated_job(7) != generated_job(8)


@pytest.mark.parametrize("seed", SEEDS)
def test_no_text_stands_on_another_or_on_a_line_and_all_is_in_the_frame(
    seed: int, folder: Path
) -> None:
    for _, sheet in sheets_of(seed, folder):
        assert texts_on_texts(sheet) == [], sheet.name
        assert texts_on_lines(sheet) == [], sheet.name
        assert outside_the_frame(sheet) == [], sheet.name


@pytest.mark.parametrize("seed", SEEDS)
def test_every_board_has_its_diagram_and_its_chart(seed: int, folder: Path) -> None:
    titles = [sheet.title for _, sheet in sheets_of(seed, folder)]
    charts = [title for title in titles if title.startswith("Door chart")]
    boards = {title.split()[2].rstrip(",") for title in charts}
    idents = {item.ident for _, sheet in sheets_of(seed, folder) for item in sheet.items}
    assert boards
    assert {f"{tag}:enclosure" for tag in boards} <= idents
    if len(boards) > 1:
        assert titles[0].startswith("Distribution overview")
        assert {f"board:{tag}" for tag in boards} <= idents


@pytest.mark.skipif(not os.environ.get(ENV), reason=f"{ENV} does not name the drawing measurer")
@pytest.mark.parametrize("seed", SEEDS)
def test_the_measurer_finds_no_broken_gate(seed: int, folder: Path) -> None:
    files = []
    for _, sheet in sheets_of(seed, folder):
        file = folder / f"{seed}-{sheet.name}.svg"
        file.write_text(write_svg(sheet), encoding="utf-8")
        files.append(str(file))
    for fonts in LETTERINGS.values():
        command = [sys.executable, os.environ[ENV], "--gates", *fonts, *files]
        found = subprocess.run(command, capture_output=True, text=True, check=False)
        broken = [line for line in found.stdout.splitlines() if line.startswith("FAIL")]
        assert broken == []
        assert found.returncode == 0, found.stderr
