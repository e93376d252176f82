"""The design check as a table: what fails, what needs a decision, what could not be checked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from asfitted.check.finding import Finding
    from asfitted.layout.sheet_model import Model

COLUMNS = (
    Column("Result", wraps=False),
    Column("Rule", wraps=False),
    Column("What"),
    Column("Finding"),
    Column("To do"),
    Column("Clause"),
)

#: Findings in one row of the table: a page must hold the row.
MOST_ALIKE, MOST_WORDED = 24, 4


def check_list(model: Model) -> Table:
    """Return one row for each rule that found something, gravest first.

    Findings of one rule that ask for the same thing share a row; every subject is named.
    """
    groups: dict[tuple[str, str, str], list[Finding]] = {}
    for finding in model.report.findings:
        groups.setdefault((finding.word, finding.rule, finding.to_do), []).append(finding)
    rows: list[tuple[str, ...]] = []
    idents: list[str] = []
    strong: set[int] = set()
    for (word, rule, to_do), group in groups.items():
        for part in _parted(group):
            if any(finding.stops_work for finding in part):
                strong.add(len(rows))
            rows.append((word, rule, _subjects(part), _messages(part), to_do, _clause(part[0])))
            idents.append(f"{rule}/{word}/{part[0].subject}/{len(rows):03d}")
    return Table(COLUMNS, tuple(rows), tuple(idents), strong_rows=frozenset(strong))


def _parted(group: list[Finding]) -> list[list[Finding]]:
    """Return a group in parts whose rows fit on a page: fewer where each has words of its own."""
    alike = len({finding.message for finding in group}) == 1
    most = MOST_ALIKE if alike else MOST_WORDED
    return [group[at : at + most] for at in range(0, len(group), most)]


def _clause(finding: Finding) -> str:
    """Return the clause without the remark on its edition, which stands once on the sheet."""
    return finding.clause.replace(" (2018 numbering, not compared with A4:2026)", "")


def _subjects(group: list[Finding]) -> str:
    names = dict.fromkeys(finding.subject for finding in group)
    return ", ".join(names)


def _messages(group: list[Finding]) -> str:
    """Return what was found: once where all say the same, else each with its subject."""
    said = dict.fromkeys(finding.message for finding in group)
    if len(said) == 1:
        return next(iter(said))
    return "\n".join(f"{f.subject}: {f.message}" for f in group)
