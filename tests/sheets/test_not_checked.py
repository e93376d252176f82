"""What was not checked is told on the first page of every pack, with a way to the whole list."""

from __future__ import annotations

import io
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from pypdf import PdfReader
from sheet_words import items_of, said

from asfitted.check.run import CheckReport
from asfitted.pack.pdf import pack_pdf
from asfitted.pack.readers import sheets_for
from asfitted.sheets import lay_out_sheets

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Item, SheetLayout
    from asfitted.layout.sheet_model import Model

    Sheets = tuple[SheetLayout, ...]

JOBS = ("pottery-studio", "community-shed", "shop-cctv")


def box_of_cover(sheets: Sheets) -> Item:
    return next(i for _, i in items_of(sheets, "cover") if said(i).startswith("Not checked:"))


@pytest.mark.parametrize("job", JOBS)
def test_the_cover_counts_what_was_not_checked(
    demo_models: dict[str, Model], demo_sheets: dict[str, Sheets], job: str
) -> None:
    report = demo_models[job].report
    words = said(box_of_cover(demo_sheets[job]))
    count = sum(finding.word == "not checked" for finding in report.findings)
    assert count == report.not_checked
    if count:
        assert words.startswith(f"Not checked: {count} check")
        assert "Not checked is not a pass" in words
    else:
        assert words.startswith("Not checked: nothing")


def test_the_first_reasons_are_told_and_the_rest_counted(
    demo_models: dict[str, Model], demo_sheets: dict[str, Sheets]
) -> None:
    report = demo_models["pottery-studio"].report
    reasons = {f.message for f in report.findings if f.word == "not checked"}
    words = said(box_of_cover(demo_sheets["pottery-studio"]))
    first = next(f for f in report.findings if f.word == "not checked")
    told = first.message.removeprefix("Not checked: ")[1:40]
    assert told in words
    assert f"And {len(reasons) - 2} more reasons." in words


def test_the_link_leads_to_the_first_row_of_the_whole_list(demo_sheets: dict[str, Sheets]) -> None:
    sheets = demo_sheets["pottery-studio"]
    link = box_of_cover(sheets).link
    number, _, ident = link.partition("#")
    target = next(sheet for sheet in sheets if sheet.number == number)
    assert target.key.startswith("outstanding")
    assert ident in {item.ident for item in target.items}
    assert f"The whole list: sheet {number}." in said(box_of_cover(sheets))


@pytest.mark.parametrize("reader", ["", "inspector", "client", "second-electrician"])
def test_the_first_page_of_each_pack_says_it(
    demo_models: dict[str, Model], demo_sheets: dict[str, Sheets], reader: str
) -> None:
    kept = sheets_for(demo_sheets["pottery-studio"], reader)
    job = demo_models["pottery-studio"].installation.job
    first = PdfReader(io.BytesIO(pack_pdf(kept[:1], job))).pages[0]
    assert "Not checked: " in first.extract_text()


def test_a_job_with_nothing_left_unchecked_says_so(demo_models: dict[str, Model]) -> None:
    model = demo_models["community-shed"]
    rest = tuple(f for f in model.report.findings if f.word not in {"not checked", "error"})
    report = CheckReport(rest, model.report.checked, 0)
    words = said(box_of_cover(lay_out_sheets(replace(model, report=report))))
    assert words.startswith("Not checked: nothing (0 errors")
