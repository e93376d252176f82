"""Cover and issue sheet: whose job, which issue, what the set holds, who answers for it."""

from __future__ import annotations

import re
from functools import partial
from typing import TYPE_CHECKING

from asfitted.layout.document.blocks import Boxed, Facts, Heading, Paragraph, Ruled
from asfitted.layout.document.edition_words import NOT_COMPARED
from asfitted.layout.document.plain_words import or_not_recorded, recorded, site_print_words
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.layout.table import Column, Table
from asfitted.sheets._document_pages import build_document, plan_one_page
from asfitted.sheets._not_checked import not_checked_box
from asfitted.sheets._sheet_series import series_of

if TYPE_CHECKING:
    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan
    from asfitted.resolve.installation import Job

ORDER = 1
LATE = 5  # it tells of every other sheet
KEY = "cover"
MOST_ISSUES = 6  # the newest; the record of change has them all
MOST_REASONS, LEAST_REASONS = 4, 2  # why something was not checked
MANY_TITLES = 8  # in a set that names fewer, fewer reasons are told too
MOST_TITLES = 14  # of one section, on the cover; the drawing list names every sheet
ISSUE_COLUMNS = (
    Column("Revision", wraps=False),
    Column("Date", wraps=False),
    Column("What it is for"),
    Column("By"),
    Column("Checked on site by"),
)
CONTENT_COLUMNS = (
    Column("Part", wraps=False),
    Column("Sheets", least_mm=22.0, wraps=False),
    Column("What it holds"),
)
CAUTIONS = (
    "For use by a competent person. Isolate, lock off and prove dead before opening anything.",
    "This set is a design aid and a record, not a certificate. Certificates are signed documents.",
    "Calculated figures are not measured values. What stands blank was not measured.",
)
_PART = re.compile(r",(?: part)? \d+ of \d+")


def plan(model: Model) -> list[SheetPlan]:
    """Plan the cover: always one page, so that other sheets can name it.

    In a large set it names fewer sheets of each part; the drawing list names them all.
    """
    return plan_one_page(
        key=KEY,
        title="Cover and issue sheet",
        section="Front",
        heading="Handover pack",
        most=MOST_TITLES,
        blocks=partial(_blocks, model),
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - planned whole
    """Lay out the page."""
    return build_document(plan, numbers)


def _blocks(model: Model, most_titles: int) -> list[Block]:
    job = model.installation.job
    is_site_print = bool(model.installation.site_marks)
    return [
        Paragraph(f"{job.number}   {job.title}", bold=True, large=True),
        *([Paragraph(site_print_words(job), bold=True)] if is_site_print else []),
        Facts(_facts(job), 44.0),
        Boxed("Before you rely on this set", CAUTIONS),
        not_checked_box(model, MOST_REASONS if most_titles > MANY_TITLES else LEAST_REASONS),
        Heading("Issues"),
        Ruled("issues", _issues(job)),
        Heading("What the set holds"),
        Ruled("contents", _contents(model, most_titles)),
        Paragraph(
            "Sheet numbers are those of the whole set; a reader who was given a part of it keeps "
            "them. The job file and the files it reads, prices apart, are attached to this "
            "document: anyone can draw the set again."
        ),
    ]


def _facts(job: Job) -> tuple[tuple[str, str], ...]:
    call = f"{job.installer}, {job.phone}" if recorded(job.phone) else job.installer
    if not recorded(job.phone):
        call += f"; telephone number {NOT_RECORDED}"
    rows = [
        ("Client", or_not_recorded(job.client)),
        ("Site", or_not_recorded(job.site)),
        ("Status", f"{job.status}, revision {job.revision}, {job.date}"),
        ("By, to call", call),
        *_firm(job),
        ("Designed by", or_not_recorded(job.designer)),
        ("Checked on site by", or_not_recorded(job.checker)),
        ("Designed to", f"{job.edition}; {NOT_COMPARED}"),
    ]
    return tuple(rows)


def _firm(job: Job) -> list[tuple[str, str]]:
    """Return what else is known of the firm."""
    firm = job.firm
    if firm is None:
        return []
    address = ", ".join(firm.address) or NOT_RECORDED
    mail = f"; {firm.email}" if recorded(firm.email) else ""
    rows = [("Address", address + mail)]
    if recorded(firm.registration):
        rows.append(("Registration", firm.registration))
    return rows


def _issues(job: Job) -> Table:
    given = job.revisions[-MOST_ISSUES:]
    rows = [(r.revision, r.date, r.what, r.by, r.checked) for r in given]
    if not rows:
        what = f"{job.status}; what changed is {NOT_RECORDED}"
        rows = [(job.revision, job.date, what, job.designer, job.checker)]
    idents = tuple(f"{i:03d}" for i in range(len(rows)))
    return Table(ISSUE_COLUMNS, tuple(rows), idents, strong_rows=frozenset({len(rows) - 1}))


def _contents(model: Model, most_titles: int) -> Table:
    """Return one row for each part of the set, with its first and last sheet."""
    parts: dict[str, list[SheetPlan]] = {}
    for sheet in model.planned:
        parts.setdefault(sheet.section, []).append(sheet)
    rows, idents = [], []
    for section, sheets in parts.items():
        front = section == "Front"
        first = KEY if front else sheets[0].key
        last = sheets[-1].key
        numbers = f"[[{first}]]" if first == last else f"[[{first}]] to [[{last}]]"
        titles = list(dict.fromkeys(_PART.sub("", series.title) for series in series_of(sheets)))
        if front:
            titles = ["Cover and issue sheet", *titles]
        rows.append((section, numbers, _some(titles, most_titles)))
        idents.append(section)
    return Table(CONTENT_COLUMNS, tuple(rows), tuple(idents))


def _some(titles: list[str], most: int) -> str:
    """Return the first titles in a row, and how many there are besides."""
    left = len(titles) - most
    return "; ".join(titles[:most]) + (f"; {left} more" if left > 0 else "")
