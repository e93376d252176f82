"""Tags that find no room on a crowded plan: a number in a ring, and a table that says the rest."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.layout.callout_choice import place_together
from asfitted.layout.schedule.words import place
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.callout import Callout
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.plan.plan_things import PlanThing

COLUMNS = (
    Column("No.", "end", wraps=False),
    Column("Tag"),
    Column("What"),
    Column("Where"),
)
REACH_MM = 26.0
NO_RING, NO_SIGN = "–", "not drawn"


def place_keynotes(
    drawing: Drawing,
    left: Sequence[Callout],
    things: Sequence[PlanThing],
    undrawn: Sequence[PlanThing],
) -> Table | None:
    """Put rings with numbers where tags found no room; return the table of them, or None.

    Args:
        drawing: the plan so far.
        left: callouts without a place.
        things: everything on the plan, for their places.
        undrawn: things for which even their symbol found no room.
    """
    named = [c for c in left if c.tag]
    numbered = [replace(c, keynote=i, other_lines=()) for i, c in enumerate(named, start=1)]
    rings, without = place_together(drawing.room, numbered, reach=REACH_MM)
    drawing.extend(rings)
    lost = {c.ident for c in without}
    where = {thing.tag: place(thing.position) for thing in things}
    rows = [
        (
            NO_RING if c.ident in lost else str(c.keynote),
            c.tag,
            ", ".join(c.lines) or "–",
            where.get(c.tag, "see its level"),
        )
        for c in numbered
    ]
    rows += [(NO_SIGN, t.tag, ", ".join(t.lines) or "–", place(t.position)) for t in undrawn]
    if not rows:
        return None
    return Table(COLUMNS, tuple(rows), tuple(f"keynote:{row[1]}:{i}" for i, row in enumerate(rows)))
