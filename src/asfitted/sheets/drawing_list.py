"""The drawing list: every sheet of the set with its issue; each row leads to its sheet.

Sheets of one series share a row, so that the list of a large job stays a list that is read. Every
sheet of a set carries the revision of the set; which of them it changed has a column of its own,
once the set was compared with the issue before.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.document.blocks import Paragraph, Ruled
from asfitted.layout.document.plain_words import site_print_words
from asfitted.layout.revision.marks import ALWAYS_NEW
from asfitted.layout.sheet_model import SheetPlan
from asfitted.layout.table import Column, Table
from asfitted.sheets._document_pages import build_document, plan_document
from asfitted.sheets._reader_words import readers_words
from asfitted.sheets._sheet_series import numbers_of, series_of

if TYPE_CHECKING:
    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import Content, Model, Numbers
    from asfitted.sheets._sheet_series import Series

ORDER = 6
LATE = 4  # it names every other sheet; the cover, which is one page, it knows by its key
KEY = "drawing-list"
TITLE = "Drawing list"
COLUMNS = (
    Column("Sheet", wraps=False, least_mm=14.0),
    Column("Count", align="end", wraps=False),
    Column("Title"),
    Column("Paper", wraps=False),
    Column("Revision", wraps=False),
    Column("In the pack of", wraps=False),
)
WHAT = (
    "Every sheet of the full set; sheets of one series share a row, which leads to the first of "
    "them. The last column says in whose packs a sheet is; “electrician” is the second one."
)
EVERY_READER = "all"
SUPERSEDED = "A sheet of an older revision than this list says is superseded: destroy it."
WITH_EACH_ISSUE = "each issue"  # a front or handover page tells of the issue itself


def plan(model: Model) -> list[SheetPlan]:
    """Plan as many pages as the list needs, the list itself counted in."""
    pages: list[SheetPlan] = []
    while True:
        known = _with_own(model.planned, pages or [_own()])
        planned = plan_document(key=KEY, title=TITLE, section="Front", blocks=_blocks(known, model))
        if len(planned) == len(pages):
            return planned
        pages = planned


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - planned whole
    """Lay out one page."""
    return build_document(plan, numbers)


def _own() -> SheetPlan:
    return SheetPlan(KEY, TITLE, "A4 portrait", "Front")


def _with_own(others: tuple[SheetPlan, ...], own: list[SheetPlan]) -> list[SheetPlan]:
    """Return every sheet in order: the cover first, the list at the end of the front part."""
    front = [sheet for sheet in others if sheet.section == "Front"]
    cover = SheetPlan("cover", "Cover and issue sheet", "A4 portrait", "Front")
    return [cover, *front, *own, *others[len(front) :]]


def _blocks(sheets: list[SheetPlan], model: Model) -> list[Block]:
    rows: list[tuple[str, ...]] = []
    idents, links, heads = [], {}, set()
    every = [sheet.key for sheet in sheets]
    columns = _columns(model)
    section = ""
    for series in series_of(sheets):
        first = series.first
        if first.section != section:
            section = first.section
            heads.add(len(rows))
            rows.append(("", "", section, *[""] * (len(columns) - 3)))
            idents.append(f"part {len(rows)} {section}")
        rows.append(_row(series, every, model))
        idents.append(first.key)
        links[first.key] = first.key
    table = Table(columns, tuple(rows), tuple(idents), tinted_rows=frozenset(heads))
    return [*_intro(model), Ruled("sheets", table, links=links)]


def _columns(model: Model) -> tuple[Column, ...]:
    """Return the columns; where the set was compared with the issue before, one tells of that."""
    if model.concerned is None:
        return COLUMNS
    changed = Column(f"Changed in {model.installation.job.revision}", least_mm=24.0)
    return (*COLUMNS[:-1], changed, COLUMNS[-1])


def _row(series: Series, every: list[str], model: Model) -> tuple[str, ...]:
    keys = [sheet.key for sheet in series.sheets]
    numbers = numbers_of((keys[0],), every)
    if len(keys) > 1:
        numbers += f" to {numbers_of((keys[-1],), every)}"
    changed = () if model.concerned is None else (_changed(series, every, model),)
    revision = model.installation.job.revision
    pack = readers_words(series.sheets, EVERY_READER)
    pack = pack.replace("second electrician", "electrician")
    return (numbers, str(len(keys)), series.title, series.papers, revision, *changed, pack)


def _changed(series: Series, every: list[str], model: Model) -> str:
    """Return which sheets of a series the newest revision changed: all, none, or their numbers."""
    if series.first.section in ALWAYS_NEW:
        return WITH_EACH_ISSUE
    concerned = {sheet.key for sheet in model.concerned or ()}
    keys = [sheet.key for sheet in series.sheets if sheet.key in concerned]
    if not keys:
        return "no"
    if len(keys) == len(series.sheets):
        return "yes" if len(keys) == 1 else "all"
    return numbers_of(keys, every)


def _intro(model: Model) -> list[Block]:
    """Return what the list is; mark-ups from site supersede nothing."""
    job = model.installation.job
    issue = f"Date of every sheet: {job.date}. Status: {job.status}."
    if model.installation.site_marks:
        return [Paragraph(site_print_words(job), bold=True), Paragraph(f"{issue} {WHAT}")]
    return [Paragraph(f"{issue} {WHAT} {SUPERSEDED}")]
