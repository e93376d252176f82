"""Tables on an elevation: the drops of the wall, and what lies in each run."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.elevation.drops_on_wall import upright
from asfitted.layout.elevation.run_tags import MOST_LISTED
from asfitted.layout.elevation.runs_on_wall import cables_on
from asfitted.layout.elevation.wall_view import height_words
from asfitted.layout.surveyed_ways import all_told
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.drops_on_wall import Stretch
    from asfitted.layout.elevation.wall_content import WallContent

MOST_IN_ROW = 60  # cables; more take further rows
DROP_COLUMNS = (
    Column("At mm", "end", least_mm=16.0),
    Column("Serves", wraps=False),
    Column("Cables"),
    Column("In"),
    Column("From", wraps=False),
    Column("To", wraps=False),
)
KEYNOTE_COLUMNS = (Column("No.", wraps=False), Column("Words for the number in the ring"))
RUN_COLUMNS = (
    Column("Run", wraps=False),
    Column("Where"),
    Column("Cables, in the order they lie"),
)


def drop_table(content: WallContent) -> Table | None:
    """Return the drops of a wall from left to right, or None when there are none."""
    drops = sorted(upright(content.stretches), key=lambda s: (s.start.along, s.serves, s.cables))
    if not drops:
        return None
    rows = tuple(_drop_row(drop) for drop in drops)
    idents = tuple(f"drop:{i}:{'+'.join(d.cables[:6])}" for i, d in enumerate(drops))
    return Table(DROP_COLUMNS, rows, idents)


def _drop_row(drop: Stretch) -> tuple[str, ...]:
    holder = drop.holder + (", outside face" if drop.is_outside else "")
    return (
        str(round(drop.start.along)),
        drop.serves or "not recorded",
        " ".join(drop.told),
        holder,
        _with_height(drop.top, drop.end.up),
        _with_height(drop.foot, drop.start.up),
    )


def _with_height(words: str, up_mm: float) -> str:
    return words if "+" in words else f"{words} {height_words(up_mm)}"


def run_table(content: WallContent, results: CalculationResults) -> Table | None:
    """Return the contents of runs with more cables than can be written beside them, or None."""
    rows: list[tuple[str, str, str]] = []
    idents: list[str] = []
    tags = dict.fromkeys(p.run.tag for p in content.pieces)

    def add(tag: str, where: str, cables: Sequence[str], ident: str) -> None:
        for n in range(0, len(cables), MOST_IN_ROW):
            rows.append((tag, where if n == 0 else "", " ".join(cables[n : n + MOST_IN_ROW])))
            idents.append(f"{ident}:{n}" if n else ident)

    for tag in tags:
        for n, (where, cables) in enumerate(_many(content, results, tag)):
            add(tag, where, cables, f"contents:{tag}/{n}" if n else f"contents:{tag}")
    for flag in content.flags:
        if len(flag.cables) > MOST_LISTED:
            ident = f"contents:{flag.tag}:{flag.side}:{round(flag.up_mm)}"
            add(flag.tag, f"at the corner to {flag.to_name}", flag.cables, ident)
    for crossing in content.crossings:
        if len(crossing.cables) > MOST_LISTED:
            where = f"over to {crossing.to_name}" if crossing.to else "overhead"
            ident = f"contents:{crossing.run.tag}:over:{round(crossing.at.along)}"
            add(crossing.run.tag, where, crossing.cables, ident)
    if not rows:
        return None
    order = sorted(
        range(len(rows)),
        key=lambda i: (list(tags).index(rows[i][0]) if rows[i][0] in tags else len(tags), i),
    )
    return Table(RUN_COLUMNS, tuple(rows[i] for i in order), tuple(idents[i] for i in order))


def _many(
    content: WallContent, results: CalculationResults, tag: str
) -> list[tuple[str, Sequence[str]]]:
    """Return where a run holds many cables, and which; one row where all of it holds the same."""
    held: dict[str, Sequence[str]] = {}
    for piece in content.pieces:
        if piece.run.tag == tag:
            told = (*held.get(piece.level, ()), *all_told(cables_on(results, piece), results))
            held[piece.level] = tuple(dict.fromkeys(told))
    if len(set(held.values())) == 1:
        held = {"on this wall": next(iter(held.values()))}
    return [(where, cables) for where, cables in held.items() if len(cables) > MOST_LISTED]


def keynote_table(words: Sequence[str]) -> Table:
    """Return the words of the numbered rings of a wall."""
    rows = tuple((str(n), each) for n, each in enumerate(words, start=1))
    return Table(KEYNOTE_COLUMNS, rows, tuple(f"keynote:{n}" for n, _ in rows))
