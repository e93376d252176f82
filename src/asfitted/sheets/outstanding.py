"""Outstanding items, limits and assumptions: what was not done, seen, known or checked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.as_fitted import is_as_fitted
from asfitted.check.plates import plates_not_read
from asfitted.layout.declared_runs import is_new_and_declared
from asfitted.layout.document.assumptions import defaults_in_use
from asfitted.layout.document.blocks import Bullets, Heading, Paragraph, Ruled
from asfitted.layout.document.plain_words import joined, recorded, sentence, some_of
from asfitted.layout.document.references import on_sheet
from asfitted.layout.document.to_choose import to_choose
from asfitted.layout.sheet_layout import READERS as EVERY_READER
from asfitted.layout.table import Column, Table
from asfitted.sheets._document_pages import build_document, plan_document

if TYPE_CHECKING:
    from asfitted.check.finding import Finding
    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan
    from asfitted.resolve.installation import Default, Installation
    from asfitted.resolve.job_record import SiteMark

ORDER = 118
LATE = 2
KEY = "outstanding"
DEVICE_POLES = "poles of the device"
MOST_VALUES = 6  # in one row
MOST_SUBJECTS = 24  # of one finding in a row; the rest goes on in the next row
FINDING_COLUMNS = (
    Column("What", least_mm=26.0),
    Column("Not checked, or open"),
    Column("To do"),
)
SITE_COLUMNS = (
    Column("What", least_mm=26.0),
    Column("As found", least_mm=60.0),
    Column("To do", least_mm=60.0),
)
NOTED_TO_DO = (
    "Inspect it, put it right or say why it may stay, and say who answers for it: no drawing "
    "shows it."
)
DRAWN_TO_DO = "Drawn here as found: the designer agrees and reissues, or has it put back."
LENGTH_TO_DO = (
    "Survey its way and mark it up: the length is as found, the way is drawn as designed."
)
ASSUMED_COLUMNS = (
    Column("What", least_mm=30.0),
    Column("Taken as, for what", least_mm=70.0),
    Column("Why", least_mm=44.0),
)
INTRO = (
    "What nobody said, saw or measured is listed here. Silence elsewhere in the set is no "
    "statement that something is right."
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the pages."""
    return plan_document(
        key=KEY,
        title="Outstanding items and limits",
        section="Handover",
        blocks=_blocks(model),
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - planned whole
    """Lay out one page."""
    return build_document(plan, numbers)


def _blocks(model: Model) -> list[Block]:
    installation, findings = model.installation, model.report.findings
    blocks: list[Block] = [
        Paragraph(INTRO),
        Heading("Standing of this issue"),
        Bullets(_standing(model)),
        Heading("Not seen on site"),
        Bullets(_not_seen(installation)),
    ]
    if chosen := to_choose(model):
        blocks += [Heading("To be chosen on site"), Bullets(chosen)]
    if installation.site_marks:
        table = _site_table(installation.site_marks)
        blocks += [Heading("Found on site: to be answered"), Ruled("site-marks", table)]
    for words, heading in (
        ("error", "Errors: to be put right before it is energised"),
        ("warning", "Open: decisions of the designer"),
        ("not checked", "Not checked"),
        ("waived", "Accepted departures"),
    ):
        found = [f for f in findings if f.word == words]
        if found:
            table = _finding_table(found)
            blocks += [Heading(heading), Ruled(f"open-{words.replace(' ', '-')}", table)]
    if assumed := defaults_in_use(installation, model.results):
        table = _assumed_table(assumed)
        blocks += [Heading("Taken as usual, because it was not given"), Ruled("assumed", table)]
    return blocks


def _standing(model: Model) -> tuple[str, ...]:
    job = model.installation.job
    entries = [f"Status: {job.status}, revision {job.revision}, {job.date}."]
    missing = [
        name
        for name, value in (
            ("client", job.client),
            ("site", job.site),
            ("installer", job.installer),
            ("telephone number", job.phone),
            ("designer", job.designer),
            ("who checked it on site", job.checker),
            ("date of the next inspection", model.installation.handover.next_inspection),
        )
        if not recorded(value)
    ]
    if missing:
        entries.append(f"Not recorded: {', '.join(missing)}.")
    readings = model.installation.readings
    tests = on_sheet(model, "test-results", readers=EVERY_READER)
    if readings is None and model.installation.boards:
        entries.append(
            "No test reading is given; figures marked (m) are as given, nothing else was measured"
            + (f". Blank test sheets from {tests}." if tests else ".")
        )
    check = on_sheet(model, "design-check", readers=EVERY_READER)
    if check:
        entries.append(f"Every finding with its clause: {check}.")
    return tuple(entries)


def _not_seen(installation: Installation) -> tuple[str, ...]:
    job = installation.job
    entries: list[str] = []
    if job.not_seen is not None and not job.not_seen:
        entries.append("The person who checked it on site says that nothing was left unseen.")
    entries += [sentence(words) for words in job.not_seen or ()]
    silent = [
        c.tag for c in installation.circuits.values() if c.state == "existing" and not c.cables
    ]
    if silent:
        entries.append(f"Cables of older circuits: {some_of(silent, 24)}.")
    declared = [r for r in installation.containment.values() if r.declared_length_m is not None]
    to_lay = [run.tag for run in declared if is_new_and_declared(run)]
    if to_lay:
        entries.append(
            f"New runs whose way is not drawn, nor their rise up a wall: {some_of(to_lay, 24)}. "
            "Set them out on site and draw them as laid."
        )
    hidden = [run.tag for run in declared if not is_new_and_declared(run)]
    if hidden:
        entries.append(f"Runs taken as declared, out of sight: {some_of(hidden, 24)}.")
    if is_as_fitted(job):
        entries += [
            f"Rating plates, {joined(missing)} not recorded: {some_of(tags, 24)}."
            for missing, tags in plates_not_read(installation).items()
        ]
    if job.not_seen is None:
        known = "; what is known so far:" if entries else "."
        entries.insert(0, f"Whoever checks it on site has not yet said what was left unseen{known}")
    return tuple(entries)


def _site_table(marks: tuple[SiteMark, ...]) -> Table:
    """Return every mark-up with what is to be done; what no drawing shows comes first."""
    rows = []
    for mark in sorted(marks, key=lambda mark: mark.drawn):
        photo = f"; photograph {mark.photo}" if mark.photo else ""
        found = f"{sentence(mark.words).rstrip('.')} ({mark.by}, {mark.date}{photo})"
        rows.append((mark.tag, found, _to_do(mark)))
    return Table(SITE_COLUMNS, tuple(rows), tuple(f"{i:04d}" for i in range(len(rows))))


def _to_do(mark: SiteMark) -> str:
    if not mark.way_given:
        return LENGTH_TO_DO
    return DRAWN_TO_DO if mark.drawn else NOTED_TO_DO


def _finding_table(findings: list[Finding]) -> Table:
    """Return one row for each thing said, however many it is said of, a page at most high."""
    groups: dict[tuple[str, str, str], list[str]] = {}
    for finding in findings:
        key = (finding.rule, finding.message, finding.to_do)
        groups.setdefault(key, []).append(finding.subject)
    rows: list[tuple[str, str, str]] = []
    for (rule, message, to_do), subjects in groups.items():
        rows += [
            (", ".join(part), f"{message} ({rule})", to_do)
            for part in _parts(list(dict.fromkeys(subjects)))
        ]
    return Table(FINDING_COLUMNS, tuple(rows), tuple(f"{i:04d}" for i in range(len(rows))))


def _assumed_table(defaults: tuple[Default, ...]) -> Table:
    """Return one row for each kind of assumption and reason, with what was taken for which."""
    groups: dict[tuple[str, str], dict[str, list[str]]] = {}
    for default in defaults:
        what = DEVICE_POLES if default.what.startswith("poles of ") else default.what
        values = groups.setdefault((what, default.reason), {})
        values.setdefault(default.value, []).append(default.subject)
    rows: list[tuple[str, str, str]] = []
    for (what, why), values in groups.items():
        told = [
            f"{value}: {', '.join(part)}"
            for value, subjects in values.items()
            for part in _parts(list(dict.fromkeys(subjects)))
        ]
        rows += [(what, "; ".join(part), why) for part in _parts(told, MOST_VALUES)]
    return Table(ASSUMED_COLUMNS, tuple(rows), tuple(f"{i:04d}" for i in range(len(rows))))


def _parts(names: list[str], most: int = MOST_SUBJECTS) -> list[list[str]]:
    """Return names in parts of a length that a row holds."""
    return [names[at : at + most] for at in range(0, len(names), most)]
