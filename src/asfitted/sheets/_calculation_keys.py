"""The first calculation sheets: which circuit is on which, symbols, marks and numbered sources."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.explain.explanation import CAUTIONS
from asfitted.explain.sheet_rows import KEY as SYMBOLS
from asfitted.layout.document.blocks import Heading, Paragraph, Ruled
from asfitted.layout.document.edition_words import CLAUSES, HOW_KNOWN
from asfitted.layout.table import Column, Table
from asfitted.sheets._document_pages import plan_document

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.explain.sheet_rows import Block as CircuitRows
    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import SheetPlan

KEY = "calculation-keys"
TITLE = "Calculation keys"
INDEX_COLUMNS = (Column("Circuit", wraps=False), Column("Name"), Column("Sheet", least_mm=24.0))
SYMBOL_COLUMNS = (Column("Symbol", wraps=False), Column("Meaning and formula"))
MARK_COLUMNS = (Column("Mark", wraps=False), Column("How the figure is known"))
SOURCE_COLUMNS = (Column("See", wraps=False), Column("Where it stands, and how it is known"))


def plan_keys(
    circuits: Sequence[CircuitRows],
    begins_on: dict[str, tuple[str, ...]],
    sources: tuple[tuple[str, str], ...],
    rows_ident: str,
) -> list[SheetPlan]:
    """Plan the key sheets.

    Args:
        circuits: the circuits that have rows, in order.
        begins_on: keys of the sheets that each circuit stands on, by its tag.
        sources: numbers and words of the sources.
        rows_ident: ident of the table of the working, whose rows the index leads to.
    """
    index = tuple(
        (one.tag, one.rows[0][1], ", ".join(f"[[{key}]]" for key in begins_on[one.tag]))
        for one in circuits
    )
    links = {one.tag: f"{begins_on[one.tag][0]}#{rows_ident}:{one.tag}:0" for one in circuits}
    symbols = tuple((mark, f"{words}: {formula}") for mark, words, formula in SYMBOLS)
    blocks: list[Block] = [
        Paragraph(CAUTIONS[0]),
        Heading("Which circuit is on which sheet"),
        Ruled("calculation-index", _table(INDEX_COLUMNS, index), links=links),
        Heading("Symbols and formulae"),
        Ruled("calculation-symbols", _table(SYMBOL_COLUMNS, symbols)),
        Heading("Marks of the sources"),
        Paragraph(CLAUSES, leads=True),
        Ruled("calculation-marks", _table(MARK_COLUMNS, HOW_KNOWN)),
        Heading("Sources"),
        Ruled("calculation-sources", _table(SOURCE_COLUMNS, sources)),
    ]
    return plan_document(
        key=KEY,
        title=TITLE,
        section="Calculations",
        heading="Calculations: index, symbols and sources",
        blocks=blocks,
    )


def _table(columns: tuple[Column, ...], rows: tuple[tuple[str, ...], ...]) -> Table:
    return Table(columns, rows, tuple(row[0] for row in rows))
