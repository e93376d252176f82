"""The calculation sheets: complete, true to the results, and few."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from asfitted.draw.symbols import catalogue
from asfitted.explain.sheet_rows import KEY, circuit_blocks
from asfitted.layout.sheet_model import Model
from asfitted.pipeline import Checked, check_job
from asfitted.sheets import calculation_sheets

if TYPE_CHECKING:
    from asfitted.sheets._table_pages import TablePage

SPECS = Path(__file__).parent.parent.parent / "specs"


@cache
def _job(name: str) -> Checked:
    return check_job(SPECS / f"{name}.yaml")


def _pages(name: str) -> list[TablePage]:
    job = _job(name)
    model = Model(job.installation, job.results, job.report, catalogue())
    plans = calculation_sheets.plan(model)
    return [plan.payload for plan in plans if "keys" not in plan.key]


def test_every_row_stands_on_the_sheets_once_and_in_order() -> None:
    job = _job("pottery-studio")
    blocks, _ = circuit_blocks(job.installation, job.results)
    wanted = [row for block in blocks for row in block.rows]
    drawn = [row for page in _pages("pottery-studio") for row in page.fitted.table.rows]
    assert [row for row in drawn if not row[1].endswith(", continued")] == wanted


def test_no_circuit_begins_or_ends_on_a_page_with_a_scrap() -> None:
    for page in _pages("pottery-studio"):
        table = page.fitted.table
        heads = sorted(table.tinted_rows)
        assert heads[0] == 0, "a page begins with the heading of its circuit"
        assert table.rows[-1][-1] != "–", "a cable's name ends no page"
        assert len(table.rows) - heads[-1] >= 4


def test_the_studio_needs_few_pages_and_a_job_without_circuits_none() -> None:
    assert len(_pages("pottery-studio")) <= 8
    assert _pages("shop-cctv") == []


def test_rows_carry_the_figures_of_the_results() -> None:
    # kiln: 18 kW / (sqrt 3 x 400 V) = 25.98 A; 62 A x 0.73 = 45.26 A (Tables 4D4A, 4C1)
    job = _job("pottery-studio")
    blocks, sources = circuit_blocks(job.installation, job.results)
    kiln = next(block for block in blocks if block.tag == "DB1/6TP")
    by_symbol = {row[0]: row for row in reversed(kiln.rows)}
    assert by_symbol["Ib"][3] == "25.98 A"
    assert by_symbol["Iz"][2:4] == ("62 A × 1 × 0.73", "45.26 A")
    numbers = {number for number, _ in sources}
    assert {row[4] for row in kiln.rows} - {"", "–"} <= numbers
    held = {mark for symbols, _, _ in KEY for mark in symbols.split(", ")}
    tags = {kiln.tag, *job.installation.circuits[kiln.tag].cables}
    assert {row[0] for row in kiln.rows} - tags <= held


def test_circuits_that_were_not_surveyed_are_left_to_the_door_chart() -> None:
    job = _job("pottery-studio")
    blocks, _ = circuit_blocks(job.installation, job.results)
    surveyed = {tag for tag, one in job.installation.circuits.items() if one.cables}
    assert {block.tag for block in blocks} == surveyed
