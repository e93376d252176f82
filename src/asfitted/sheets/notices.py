"""Notices and labels owed: which, where and why, with room to tick them off."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from asfitted.layout.document.blocks import Paragraph, Ruled
from asfitted.layout.document.plain_words import head_boards, joined, short_place, some_of
from asfitted.layout.document.references import on_sheet
from asfitted.layout.sheet_layout import READERS as EVERY_READER
from asfitted.layout.table import Column, Table
from asfitted.sheets._document_pages import build_document, plan_document

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan

ORDER = 110
LATE = 1
KEY = "notices"
COLUMNS = (
    Column("Notice or label", least_mm=38.0),
    Column("Where", least_mm=40.0),
    Column("Why", least_mm=40.0),
    Column("Fitted", align="middle", least_mm=16.0),
    Column("By, date", least_mm=22.0),
)
INTRO = (
    "Tick each when it is fixed. The wording of a notice is that of the current edition of the "
    "standard named; printed labels carry it. Numbers are those of BS 7671:2018, not compared "
    "with the current amendment."
)
STANDARD_WORDS = "Safety Electrical Connection – Do Not Remove"


class Notice(NamedTuple):
    """One notice: what it is, where it goes, and why it is owed."""

    what: str
    where: str
    why: str


def plan(model: Model) -> list[SheetPlan]:
    """Plan the list; none where nothing is owed."""
    if not list(_notices(model)):
        return []
    return plan_document(
        key=KEY, title="Notices and labels", section="Handover", blocks=_blocks(model)
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - planned whole
    """Lay out one page."""
    return build_document(plan, numbers)


def _blocks(model: Model) -> list[Block]:
    rows = tuple((n.what, n.where, n.why, "☐", "") for n in _notices(model))
    idents = tuple(f"{i:03d}" for i in range(len(rows)))
    labels = on_sheet(model, "labels", readers=EVERY_READER)
    more = f" Labels of cables, ways and devices: {labels}." if labels else ""
    table = Table(COLUMNS, rows, idents)
    return [Paragraph(INTRO + more), Ruled("notices", table, least_row_mm=8.0)]


def _notices(model: Model) -> Iterator[Notice]:
    """Yield every notice that the job owes, boards first."""
    yield from _at_boards(model)
    yield from _at_the_origin(model)
    yield from _after_findings(model)


def _at_boards(model: Model) -> Iterator[Notice]:
    installation = model.installation
    for board in installation.boards.values():
        where = f"{board.tag}: {short_place(board.position, installation)}"
        chart = on_sheet(model, f"door-chart/{board.tag}")
        yield Notice(
            "Circuit chart in the door" + (f" ({chart})" if chart else ""),
            where,
            "BS 7671 514.9.1: what each way feeds and what protects it",
        )
        yield Notice("Board and main switch named", where, "BS 7671 514.1.1 and 462.1")
    spd = installation.supply.surge_protection if installation.supply else ""
    if spd and not spd.startswith("not fitted"):
        yield Notice(
            "What the window of the surge protection shows",
            spd.rpartition(" at ")[2] or "at the device",
            "so that a spent device is seen (common practice)",
        )


def _at_the_origin(model: Model) -> Iterator[Notice]:
    heads = head_boards(model.installation)
    if len(heads) > 1:
        tags = joined([board.tag for board in heads])
        yield Notice(
            "More than one switch isolates the installation",
            f"at each of {tags}",
            "BS 7671 514.11.1: one main switch does not make everything dead",
        )
    source = model.installation.supply.source if model.installation.supply else None
    if source is not None and type(source).__name__ == "Generator":
        yield Notice(
            "Warning of a second source of supply",
            "at the origin, at each isolator and at the generator",
            "BS 7671 514.15.1",
        )


#: Rule, name of its notice, and where it goes when the subject of the rule is no board.
_OWED = (
    ("LB-01", "RCD test notice", ""),
    ("LB-02", "Notice of two versions of colours", ""),
    ("LB-03", f"Earth and bonding label: “{STANDARD_WORDS}”", "at each clamp and at the earth bar"),
    ("LB-04", "Sign about cameras, naming who runs them", "at every way in"),
    ("LB-05", "Notice of the next inspection", "at the origin"),
)


def _after_findings(model: Model) -> Iterator[Notice]:
    """Yield the notices that the design check found owed."""
    for rule, what, place in _OWED:
        found = [f for f in model.report.findings if f.rule == rule and f.word != "waived"]
        for finding in found:
            board = model.installation.boards.get(finding.subject)
            where = place
            if board is not None:
                where = f"{board.tag}: {short_place(board.position, model.installation)}"
            clause = finding.clause.replace(" (2018 numbering, not compared with A4:2026)", "")
            yield Notice(what, where, f"{clause}. {finding.message}")
    if not any(f.rule == "LB-05" for f in model.report.findings) and head_boards(
        model.installation
    ):
        tags = some_of([board.tag for board in head_boards(model.installation)], 4)
        yield Notice(
            "Notice of the next inspection",
            f"at the origin ({tags})",
            "BS 7671 514.12.1: once it is tested and certified",
        )
