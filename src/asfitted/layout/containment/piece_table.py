"""The table of the pieces of a run: from, to, wall, cables, fill and limit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.containment.containment_kinds import kind_of
from asfitted.layout.containment.strip_drawing import metres
from asfitted.layout.figures import rounded
from asfitted.layout.schedule.words import NOT_CHECKED
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from asfitted.layout.containment.developed_run import CutPiece, DevelopedRun

COLUMNS = (
    Column("Piece", wraps=False),
    Column("From m", "end", wraps=False),
    Column("To m", "end", wraps=False),
    Column("Wall"),
    Column("Cables"),
    Column("Fill %", "end", wraps=False),
    Column("Limit %", "end", wraps=False),
)


def piece_table(developed: DevelopedRun) -> Table:
    """Return one row for each piece; the fullest is in bold."""
    fullest = max(developed.pieces, key=lambda p: p.section.fill_pct)
    strong = frozenset(
        i for i, piece in enumerate(developed.pieces) if piece is fullest and piece.section.cables
    )
    rows = tuple(_row(developed, piece) for piece in developed.pieces)
    idents = tuple(piece.section.ident for piece in developed.pieces)
    return Table(COLUMNS, rows, idents, strong_rows=strong)


def _row(developed: DevelopedRun, piece: CutPiece) -> tuple[str, ...]:
    section = piece.section
    is_known = kind_of(developed.run.kind).filling != "length"
    where = section.wall or ("not drawn" if developed.is_declared else "overhead")
    return (
        section.ident,
        metres(piece.along[0]),
        metres(piece.along[1]),
        where,
        " ".join(section.cables) or "none",
        rounded(section.fill_pct, 0) if is_known else NOT_CHECKED,
        rounded(section.limit_pct, 0) if is_known else NOT_CHECKED,
    )
