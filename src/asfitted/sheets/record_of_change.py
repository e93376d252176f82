"""Record of change: the issues of the job, what differs from the last one, marks from site."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.document.blocks import Heading, Paragraph, Ruled
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.layout.revision.marks import AS_FITTED
from asfitted.layout.table import Column, Table
from asfitted.sheets._document_pages import build_document, plan_document
from asfitted.sheets._reader_words import readers_words

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import ConcernedSheet, Content, Model, Numbers, SheetPlan
    from asfitted.resolve.installation import Job

ORDER = 120
LATE = 3  # it names the readers of every sheet of drawings and schedules
KEY = "record-of-change"
ISSUE_COLUMNS = (
    Column("Revision", wraps=False),
    Column("Date", wraps=False),
    Column("What changed"),
    Column("By"),
    Column("Checked on site by"),
)
CHANGE_COLUMNS = (
    Column("Tag", wraps=False),
    Column("What", wraps=False),
    Column("Changed"),
    Column("Figures that follow"),
)
MARK_COLUMNS = (
    Column("Tag", wraps=False),
    Column("Found on site"),
    Column("By"),
    Column("Date", wraps=False),
    Column("Photograph"),
)
SHEET_COLUMNS = (
    Column("Sheet", wraps=False, least_mm=14.0),
    Column("Title", least_mm=60.0),
    Column("How it is marked"),
    Column("In the pack of", least_mm=36.0),
)
CLOUDS = "Clouds stand on drawings and schedules only."
NO_CLOUDS = "An as-fitted issue is a record of what is there: it carries no clouds."
THE_REST = (
    "Where the words of a text sheet changed, such as calculations, it is listed without a cloud. "
    "Front and handover pages tell of the issue itself and change with each one: they are not "
    "listed. On every other sheet the comparison found the same words, sheet numbers apart. A row "
    "leads to its sheet; where it leads nowhere the sheet is not in this pack, but in that of the "
    "readers named."
)
BY_HAND_COLUMNS = (
    Column("Sheet, zone", least_mm=24.0),
    Column("What is different on site", least_mm=80.0),
    Column("By, date", least_mm=34.0),
)
BY_HAND_ROWS = 6


def plan(model: Model) -> list[SheetPlan]:
    """Plan the pages."""
    return plan_document(
        key=KEY, title="Record of change", section="Handover", blocks=_blocks(model)
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - planned whole
    """Lay out one page."""
    return build_document(plan, numbers)


def _blocks(model: Model) -> list[Block]:
    return [
        Heading("Issues"),
        Ruled("issues", _issues(model.installation.job)),
        *_changes(model),
        *_sheets(model),
        *_marks(model),
        Heading("Found different on site"),
        Paragraph(
            "Write it here with the pen and send a photograph of the page to the firm in the title "
            "block; the next issue shows it."
        ),
        Ruled("by-hand", _table(BY_HAND_COLUMNS, [("", "", "")] * BY_HAND_ROWS), least_row_mm=9.0),
    ]


def _table(columns: tuple[Column, ...], rows: Sequence[tuple[str, ...]]) -> Table:
    return Table(columns, tuple(rows), tuple(f"{i:04d}" for i in range(len(rows))))


def _issues(job: Job) -> Table:
    rows = [(r.revision, r.date, r.what, r.by, r.checked) for r in job.revisions]
    if not rows:
        what = f"{job.status}; earlier issues and what changed: {NOT_RECORDED}"
        rows = [(job.revision, job.date, what, job.designer, job.checker)]
    return _table(ISSUE_COLUMNS, rows)


def _changes(model: Model) -> list[Block]:
    """Return what differs from the revision that was issued before."""
    found = model.changes
    if found is None:
        words = "No earlier issue was given to compare with: what changed since is not checked."
        return [Heading("Since the issue before"), Paragraph(words)]
    heading = Heading(f"Since revision {found.old.revision} of {found.old.date}")
    rows = [
        (
            change.tag,
            change.kind,
            change.words,
            "; ".join(effect.words for effect in change.effects) or "–",
        )
        for change in found.changes
    ]
    if not rows:
        return [heading, Paragraph("Nothing that was given differs, nor does a figure.")]
    return [heading, Ruled("changes", _table(CHANGE_COLUMNS, rows))]


def _sheets(model: Model) -> list[Block]:
    """Return the sheets that changed since the issue before, each row leading to its sheet."""
    if model.concerned is None:
        return []
    heading = Heading("Sheets that changed")
    if not model.concerned:
        return [heading, Paragraph("No sheet changed but those that tell of the issue itself.")]
    is_record = model.installation.job.status == AS_FITTED
    planned = {sheet.key: sheet for sheet in model.planned}
    rows = tuple(
        (
            f"[[{s.key}]]",
            s.title,
            _marking(s),
            readers_words([planned[s.key]] if s.key in planned else []),
        )
        for s in model.concerned
    )
    idents = tuple(sheet.key for sheet in model.concerned)
    return [
        heading,
        Paragraph(f"{NO_CLOUDS if is_record else CLOUDS} {THE_REST}"),
        Ruled(
            "changed-sheets",
            Table(SHEET_COLUMNS, rows, idents),
            links={key: key for key in idents},
        ),
    ]


def _marking(sheet: ConcernedSheet) -> str:
    if sheet.has_cloud:
        return "clouds"
    return "new sheet, no cloud" if sheet.is_new else "changed, no cloud"


def _marks(model: Model) -> list[Block]:
    marks = model.installation.site_marks
    if not marks:
        return []
    rows = [(m.tag, m.words, m.by, m.date, m.photo or "–") for m in marks]
    return [Heading("Marks from site"), Ruled("marks", _table(MARK_COLUMNS, rows))]
