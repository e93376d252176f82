"""Rows of a table that no page holds, parted into rows that follow one another."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.layout.table import row_height_mm

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.table import FittedTable

Cells = tuple[tuple[str, ...], ...]


def with_parted_rows(fitted: FittedTable, page_mm: float) -> FittedTable:
    """Return a table whose rows all fit a page with its header; only higher ones are parted.

    Each cell of a parted row goes on in the next part where it stopped. The first part keeps the
    ident of the row, the others have it with a number.

    Args:
        fitted: the table.
        page_mm: height of a page, header included.
    """
    most = page_mm - fitted.header_mm
    if all(height <= most + 1e-6 for height in fitted.row_mm):
        return fitted
    parts = [
        (i, n, cells)
        for i, row in enumerate(fitted.cell_lines)
        for n, cells in enumerate(_parts(row, most))
    ]
    table = fitted.table
    idents = tuple(
        table.row_idents[i] if n == 0 else f"{table.row_idents[i]}/on-{n}" for i, n, _ in parts
    )
    rows = tuple(tuple(" ".join(cell) for cell in cells) for _, _, cells in parts)
    places = list(enumerate(parts))
    return replace(
        fitted,
        table=replace(
            table,
            rows=rows,
            row_idents=idents,
            strong_rows=frozenset(at for at, (i, _, _) in places if i in table.strong_rows),
            tinted_rows=frozenset(at for at, (i, _, _) in places if i in table.tinted_rows),
        ),
        cell_lines=tuple(cells for _, _, cells in parts),
        row_mm=tuple(row_height_mm(cells) for _, _, cells in parts),
    )


def _parts(row: Cells, most_mm: float) -> Iterator[Cells]:
    """Yield a row whole, or as many lines of every cell at a time as a page holds."""
    lines = max(len(cell) for cell in row)
    count = lines
    while count > 1 and row_height_mm((tuple(" " for _ in range(count)),)) > most_mm:
        count -= 1
    for start in range(0, lines, count):
        yield tuple(cell[start : start + count] for cell in row)
