"""The design check as a table: what fails, what needs a decision, what could not be checked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

COLUMNS = (
    Column("Result", wraps=False),
    Column("Rule", wraps=False),
    Column("What"),
    Column("Finding"),
    Column("To do"),
    Column("Clause"),
)


def check_list(model: Model) -> Table:
    """Return one row for each finding, gravest first."""
    rows: list[tuple[str, ...]] = []
    strong: set[int] = set()
    for finding in model.report.findings:
        result = finding.word
        if finding.stops_work:
            strong.add(len(rows))
        rows.append(
            (
                result,
                finding.rule,
                finding.subject,
                finding.message,
                finding.to_do,
                finding.clause,
            )
        )
    idents = tuple(f"{i:03d}" for i in range(len(rows)))
    return Table(COLUMNS, tuple(rows), idents, strong_rows=frozenset(strong))
