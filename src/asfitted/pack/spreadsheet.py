"""All schedules in one workbook (.xlsx), a tab for each: the same cells as on the sheets.

Figures in columns of figures are numbers, everything else is text as printed. Same tables, same
bytes: the workbook carries no clock.
"""

from __future__ import annotations

import datetime as dt
import io
import re
from typing import TYPE_CHECKING, Any

import xlsxwriter

from asfitted.pack.design_json import CAUTION

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.layout.table import Column, Table
    from asfitted.resolve.installation import Job

LONGEST_TAB = 31  # the format allows no longer names
WIDEST, NARROWEST = 60, 6  # width of a column in characters
_FIGURE = re.compile(r"-?\d+(?:\.\d+)?")
#: The format stores when a workbook was made; without a date of issue it gets this one.
NO_DATE = dt.datetime(2000, 1, 1, tzinfo=dt.UTC)


def workbook_bytes(tables: Mapping[str, Table], job: Job) -> bytes:
    """Return a workbook of all tables, after a first tab that says whose job it is."""
    out = io.BytesIO()
    book: Any = xlsxwriter.Workbook(out, {"in_memory": True, "strings_to_formulas": False})
    book.set_properties(
        {
            "title": f"{job.number} {job.title}",
            "subject": f"{job.status}, revision {job.revision}, {job.date}",
            "author": job.installer,
            "comments": CAUTION,
            "created": _made(job),
        }
    )
    formats = {
        "head": book.add_format(
            {"bold": True, "text_wrap": True, "valign": "top", "bottom": 1, "bg_color": "#EBEBEB"}
        ),
        "text": book.add_format({"text_wrap": True, "valign": "top", "num_format": "@"}),
        "figure": book.add_format({"valign": "top", "align": "right"}),
        "strong": book.add_format({"bold": True, "text_wrap": True, "valign": "top"}),
    }
    _about(book, job, formats)
    taken = {"job"}
    for name, table in tables.items():
        _tab(book, _tab_name(name, taken), table, formats)
    book.close()
    return out.getvalue()


def _made(job: Job) -> dt.datetime:
    try:
        return dt.datetime.fromisoformat(job.date).replace(tzinfo=dt.UTC)
    except ValueError:
        return NO_DATE


def _about(book: Any, job: Job, formats: dict[str, Any]) -> None:
    """Write the tab that names job and issue, with the caution."""
    sheet = book.add_worksheet("job")
    sheet.set_column(0, 0, 18)
    sheet.set_column(1, 1, 80)
    rows = (
        ("Job", f"{job.number} {job.title}"),
        ("Client", job.client),
        ("Site", job.site),
        ("By", f"{job.installer}, {job.phone}"),
        ("Status", job.status),
        ("Revision", job.revision),
        ("Date of issue", job.date),
        ("Designed to", f"{job.edition}; clauses and tables not compared with the printed A4"),
        ("Caution", CAUTION),
    )
    for row, (label, words) in enumerate(rows):
        sheet.write_string(row, 0, label, formats["strong"])
        sheet.write_string(row, 1, words, formats["text"])


def _tab_name(name: str, taken: set[str]) -> str:
    """Return a name that the format allows and no other tab has."""
    plain = re.sub(r"[\[\]:*?/\\']", "-", name)[:LONGEST_TAB]
    found, number = plain, 2
    while found.lower() in taken:
        tail = f"~{number}"
        found, number = plain[: LONGEST_TAB - len(tail)] + tail, number + 1
    taken.add(found.lower())
    return found


def _tab(book: Any, name: str, table: Table, formats: dict[str, Any]) -> None:
    sheet = book.add_worksheet(name)
    sheet.freeze_panes(1, 1)
    sheet.repeat_rows(0)
    sheet.set_landscape()
    sheet.set_paper(9)  # A4
    sheet.fit_to_pages(1, 0)
    for place, column in enumerate(table.columns):
        sheet.write_string(0, place, column.header, formats["head"])
        sheet.set_column(place, place, _width(column, [row[place] for row in table.rows]))
    for at, row in enumerate(table.rows, start=1):
        for place, (column, cell) in enumerate(zip(table.columns, row, strict=True)):
            if column.align == "end" and _FIGURE.fullmatch(cell):
                sheet.write_number(at, place, float(cell), formats["figure"])
            elif cell:
                sheet.write_string(at, place, cell, formats["text"])
    if table.rows:
        sheet.autofilter(0, 0, len(table.rows), len(table.columns) - 1)


def _width(column: Column, cells: list[str]) -> float:
    """Return a column width in characters: of its longest line, within bounds."""
    lines = [line for cell in cells for line in cell.split("\n")]
    longest = max([len(word) for word in column.header.split()] + [len(line) for line in lines])
    return float(min(max(longest + 1, NARROWEST), WIDEST))
