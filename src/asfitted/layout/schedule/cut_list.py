"""The cut list: the arithmetic of every length, so that it can be checked with a tape."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

COLUMNS = (
    Column("Cable", wraps=False),
    Column("Cable type"),
    Column("From", wraps=False),
    Column("To", wraps=False),
    Column("Length: how it adds up (m)"),
    Column("Cut", align="end", wraps=False),
    Column("Cut by", least_mm=18.0),
)


def cut_list(model: Model) -> Table:
    """Return one row for each new cable. The last column is left for the initials of who cut it."""
    rows, idents = [], []
    for cable in model.installation.cables.values():
        route = model.results.routes.get(cable.tag)
        if route is None or cable.state != "new":
            continue
        figures, data = model.results.cables.get(cable.tag), model.results.data.get(cable.to_end)
        kind = figures.words if figures else (data.medium if data else "not recorded")
        # the sum is printed term by term: no figure is hidden in another
        total = " + ".join(f"{part.words} {part.length_m:.2f}" for part in route.parts)
        start = (
            f"{cable.circuit}" if cable.from_end in model.installation.boards else cable.from_end
        )
        rows.append((cable.tag, kind, start, cable.to_end, total, f"{route.cut_m:.1f} m", ""))
        idents.append(cable.tag)
    return Table(COLUMNS, tuple(rows), tuple(idents))
