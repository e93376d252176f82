"""The drawing list: every sheet of the set with its issue; each row leads to its sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.document.blocks import Paragraph, Ruled
from asfitted.layout.document.plain_words import site_print_words
from asfitted.layout.sheet_model import SheetPlan
from asfitted.layout.table import Column, Table
from asfitted.sheets._document_pages import build_document, plan_document

if TYPE_CHECKING:
    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import Content, Model, Numbers

ORDER = 6
LATE = 4  # it names every other sheet; the cover, which is one page, it knows by its key
KEY = "drawing-list"
TITLE = "Drawing list"
COLUMNS = (
    Column("Sheet", wraps=False, least_mm=14.0),
    Column("Title"),
    Column("Paper", wraps=False),
    Column("Revision", wraps=False),
    Column("Date", wraps=False),
    Column("Status", wraps=False),
)
WHAT = "Every sheet of the set. A row leads to its sheet."
SUPERSEDED = "A sheet of an older revision than this list says is superseded: destroy it."


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
    job = model.installation.job
    rows: list[tuple[str, ...]] = []
    idents, links, heads = [], {}, set()
    section = ""
    for sheet in sheets:
        if sheet.section != section:
            section = sheet.section
            heads.add(len(rows))
            rows.append(("", section, "", "", "", ""))
            idents.append(f"part {len(rows)} {section}")
        paper = sheet.paper.split()[0]
        rows.append((f"[[{sheet.key}]]", sheet.title, paper, job.revision, job.date, job.status))
        idents.append(sheet.key)
        links[sheet.key] = sheet.key
    table = Table(
        COLUMNS,
        tuple(rows),
        tuple(idents),
        tinted_rows=frozenset(heads),
    )
    return [*_intro(model), Ruled("sheets", table, links=links)]


def _intro(model: Model) -> list[Block]:
    """Return what the list is; mark-ups from site supersede nothing."""
    if model.installation.site_marks:
        standing = Paragraph(site_print_words(model.installation.job), bold=True)
        return [standing, Paragraph(WHAT)]
    return [Paragraph(f"{WHAT} {SUPERSEDED}")]
