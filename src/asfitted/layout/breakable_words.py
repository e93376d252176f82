"""Long words of a table cut so that no column grows wider than a page."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.layout.table import Table

MOST_LETTERS = 16


def breakable(text: str, most: int = MOST_LETTERS) -> str:
    """Return a text in which words of more than ``most`` letters may be parted.

    A long word is parted behind a hyphen or stroke where it has one, else where it must.

    Example:
        >>> breakable("CAM1-OF-THE-GATEHOUSE")
        'CAM1-OF-THE- GATEHOUSE'
    """
    return "\n".join(
        " ".join(piece for word in line.split(" ") for piece in _pieces(word, most))
        for line in text.split("\n")
    )


def _pieces(word: str, most: int) -> list[str]:
    pieces = []
    while len(word) > most:
        cut = max(word.rfind(sign, 0, most) for sign in "-/") + 1
        pieces.append(word[: cut or most])
        word = word[cut or most :]
    return [*pieces, word]


def with_breakable_words(table: Table, most: int = MOST_LETTERS) -> Table:
    """Return a table whose cells hold no word of more than ``most`` letters.

    A table without long words is returned as it is.
    """
    rows = tuple(tuple(breakable(cell, most) for cell in row) for row in table.rows)
    if rows == table.rows:
        return table
    columns = tuple(replace(column, wraps=True) for column in table.columns)
    return replace(table, rows=rows, columns=columns)
