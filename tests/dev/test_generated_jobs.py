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
from asfitted.dev.sheet_faults import faults_of
from asfitted.draw.svg import write_svg
from asfitted.pipeline import check_job, model_of

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.layout.sheet_layout import SheetLayout

KINDS = ("distribution_overview", "single_line_diagram", "door_charts")
#: One board and few circuits, several boards, four levels, A4, TT, many circuits on one board.
SMALL_SEEDS = (57, 183, 43)  # A3 and A4, removed work, words out of room
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


def test_a_seed_gives_the_same_text_and_another_seed_another() -> None:
    assert generated_job(7) == generated_job(7)
    assert generated_job(7) != generated_job(8)


@pytest.mark.parametrize("seed", SEEDS)
def test_no_sheet_has_words_on_words_or_ink_or_anything_out_of_its_frame(
    seed: int, folder: Path
) -> None:
    for _, sheet in sheets_of(seed, folder):
        assert faults_of(sheet) == [], sheet.name


@pytest.mark.parametrize("seed", SMALL_SEEDS)
def test_every_sheet_of_a_small_job_can_be_laid_out_and_has_no_fault(
    seed: int, folder: Path
) -> None:
    spec = folder / f"{seed}-whole.yaml"
    spec.write_text(generated_job(seed), encoding="utf-8")
    failures: list[tuple[str, str]] = []
    sheets = lay_out_what_can_be(model_of(check_job(spec)), (), failures)
    assert failures == []
    assert len(sheets) > 30
    assert [fault for _, sheet in sheets for fault in faults_of(sheet)] == []


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
