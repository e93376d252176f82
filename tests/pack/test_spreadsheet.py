"""The workbook, read back by another library: all tables, true figures, no clock."""

from __future__ import annotations

import io
import zipfile
from typing import TYPE_CHECKING

import openpyxl
import pytest

from asfitted.layout.table import Column, Table
from asfitted.pack.schedules import schedule_tables
from asfitted.pack.spreadsheet import workbook_bytes
from asfitted.resolve.installation import Job

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

FACTS = (
    *("number", "title", "client", "site", "installer", "phone", "designer", "checker"),
    *("edition", "date", "revision", "status", "description"),
)
JOBS = ("pottery-studio", "community-shed", "shop-cctv")


@pytest.mark.parametrize("job", JOBS)
def test_every_schedule_is_a_tab_with_the_cells_of_the_sheet(
    demo_models: dict[str, Model], job: str
) -> None:
    model = demo_models[job]
    tables = schedule_tables(model)
    book = openpyxl.load_workbook(io.BytesIO(workbook_bytes(tables, model.installation.job)))
    assert len(book.sheetnames) == len(tables) + 1
    for tab, table in zip(book.sheetnames[1:], tables.values(), strict=True):
        rows = list(book[tab].iter_rows(values_only=True))
        assert list(rows[0]) == [column.header for column in table.columns]
        for printed, stored in zip(table.rows, rows[1:], strict=True):
            for said, held in zip(printed, stored, strict=True):
                if isinstance(held, int | float):
                    assert float(said) == held
                else:
                    assert said == (held or "")


def test_figures_are_numbers_and_tags_are_words() -> None:
    columns = (Column("Way"), Column("Ib A", align="end"))
    table = Table(columns, (("4", "12.5"), ("5", "not checked")), ("4", "5"))
    book = openpyxl.load_workbook(io.BytesIO(workbook_bytes({"t": table}, _job())))
    rows = list(book["t"].iter_rows(min_row=2, values_only=True))
    assert rows == [("4", 12.5), ("5", "not checked")]


def test_a_cell_that_looks_like_a_sum_stays_words() -> None:
    table = Table((Column("Note"),), (("=1+1",),), ("a",))
    book = openpyxl.load_workbook(io.BytesIO(workbook_bytes({"t": table}, _job())))
    assert book["t"]["A2"].value == "=1+1"
    assert book["t"]["A2"].data_type in {"s", "inlineStr"}


def test_long_and_equal_names_of_tabs_are_told_apart() -> None:
    table = Table((Column("Note"),), (("a",),), ("a",))
    long = "x" * 40
    tables = {long + "1": table, long + "2": table, "a/b": table, "job": table}
    book = openpyxl.load_workbook(io.BytesIO(workbook_bytes(tables, _job())))
    assert len(set(book.sheetnames)) == 5
    assert all(len(name) <= 31 for name in book.sheetnames)  # the format allows no more


def test_the_same_tables_give_the_same_bytes(demo_models: dict[str, Model]) -> None:
    model = demo_models["community-shed"]
    tables = schedule_tables(model)
    first = workbook_bytes(tables, model.installation.job)
    assert first == workbook_bytes(tables, model.installation.job)
    dates = {info.date_time for info in zipfile.ZipFile(io.BytesIO(first)).infolist()}
    assert dates == {(1980, 1, 1, 0, 0, 0)}


def test_blank_readings_stay_blank(demo_models: dict[str, Model]) -> None:
    model = demo_models["community-shed"]
    tables = schedule_tables(model)
    book = openpyxl.load_workbook(io.BytesIO(workbook_bytes(tables, model.installation.job)))
    rows = list(book["test-results-CU1"].iter_rows(values_only=True))
    place = rows[0].index("Zs read Ω")
    assert {row[place] for row in rows[1:]} == {None}


def _job() -> Job:
    facts = dict.fromkeys(FACTS, "not recorded")
    return Job(**facts)
