"""The order of work, step by step (common practice): made dead first, energised last."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.materials.duct_fittings import BURIED
from asfitted.layout.brief.in_place import FOUND, in_place, left_to_do
from asfitted.layout.brief.live_words import ASBESTOS, isolation_steps
from asfitted.layout.declared_runs import is_new_and_declared, trench_step
from asfitted.layout.elevation.things_on_wall import IN_CABINET
from asfitted.layout.table import Column, Table
from asfitted.resolve.starters import BUILT_IN, STARTER

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.layout.brief.wall_sketch import WallWork
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import PointServed

BOX = "☐"
COLUMNS = (
    Column("Step", align="middle", wraps=False),
    Column("What to do"),
    Column("Done", align="middle", wraps=False),
)


def order_of_work(model: Model, works: Sequence[WallWork]) -> Table:
    """Return the steps in order (common practice), each with the tags it is about.

    Args:
        model: the job.
        works: its walls, to tell what is fixed near a board that is live.
    """
    rows = [(str(i), words, BOX) for i, words in enumerate(_steps(model, works), start=1)]
    return Table(COLUMNS, tuple(rows), tuple(f"step {row[0]}" for row in rows))


def _steps(model: Model, works: Sequence[WallWork]) -> Iterator[str]:
    yield f"Read this brief with the person in charge; check date and revision; {ASBESTOS}."
    yield from isolation_steps(model, works)
    job = model.installation
    removed = [
        thing.tag
        for group in (job.containment, job.points, job.boards, job.data_devices, job.cables)
        for thing in group.values()
        if thing.state == "removed"
    ]
    if removed:
        yield f"Prove dead, then take out: {', '.join(removed)}."
    found = in_place(job)
    if found:
        yield (
            f"{FOUND.capitalize()} on site: {', '.join(found)}. Look them over against this "
            "print; do what is missing."
        )
    yield "Mark out boards, points and runs on the walls; scan; agree clashes before drilling."
    yield from _fixed(model)
    yield from _laid(model)
    yield "Gland and terminate at the loads first; clip and tie; close holes and seal walls."
    yield "Dead tests on each cable before any connection at a board."
    yield from _last_steps(model)


def _fixed(model: Model) -> Iterator[str]:
    """Yield what is fixed to the building: runs, boards and accessories, data devices."""
    job = model.installation
    found = in_place(job)
    new = [r for r in job.containment.values() if r.state == "new"]
    buried = [r for r in new if is_new_and_declared(r) and r.kind == BURIED]
    runs = left_to_do([r.tag for r in new if r not in buried], found)
    if runs:
        yield f"Fix supports at the centres listed, then containment: {', '.join(runs)}."
    yield from (trench_step(run) for run in buried if run.tag not in found)
    boards = [b.tag for b in job.boards.values() if b.state == "new"]
    things = [p.tag for p in job.points.values() if p.state == "new"]
    cabinet = [job.cabinet.tag] if job.cabinet is not None else []
    fixed = left_to_do([*boards, *cabinet, *things], found)
    if fixed:
        yield f"Fix boards, boxes and accessories: {', '.join(fixed)}."
    devices = [d for d in job.data_devices.values() if d.kind not in IN_CABINET]
    data = left_to_do([d.tag for d in devices if d.state == "new"], found)
    if data:
        yield f"Fix data devices, their cables to follow: {', '.join(data)}."


def _laid(model: Model) -> Iterator[str]:
    """Yield what is cut and pulled: armoured cables, other power cables, data cables."""
    off, found = model.results.take_off, in_place(model.installation)
    armoured = {g.cable for g in off.glands} if off is not None else set()
    cables = model.installation.cables.values()
    new = [c for c in cables if c.state == "new" and c.tag not in found]
    for words, tags in (
        ("Cut, label and lay armoured cables", [c.tag for c in new if c.tag in armoured]),
        (
            "Cut, label and pull other power cables",
            [c.tag for c in new if c.tag not in armoured and c.band == "power"],
        ),
        ("Cut, label and pull data cables last", [c.tag for c in new if c.band == "data"]),
    ):
        if tags:
            yield f"{words}: {', '.join(tags)}."


def _last_steps(model: Model) -> Iterator[str]:
    """Yield data devices, connection, and what a competent person does before it is used."""
    job = model.installation
    new = [d for d in job.data_devices.values() if d.state == "new" and d.kind in IN_CABINET]
    inside = left_to_do([d.tag for d in new], in_place(job))
    if inside:
        where = f" in {job.cabinet.tag}" if job.cabinet is not None else ""
        yield f"Fit{where}: {', '.join(inside)}; connect, mark and test the data cables."
    boards = [b for b in job.boards.values() if b.state != "removed"]
    if not boards:
        return
    told = ", ".join(b.tag + (" (new)" if b.state == "new" else "") for b in boards)
    yield (
        f"Connect at the boards: {told}. By a competent person, isolated, locked off and proved "
        "dead; new boards before the board that feeds them."
    )
    relays = [relay_words(p) for p in job.points.values() if p.state == "new" and has_relay(p)]
    if relays:
        yield f"By a competent person, still dead: set the overload relays: {', '.join(relays)}."
    yield "By a competent person, energise for live tests only: polarity, Zs, RCDs."
    yield "By a competent person: readings against the limits, energise for use, certificate."


def has_relay(point: PointServed) -> bool:
    """Tell whether a point holds an overload relay that is to be set: a starter, or a machine's."""
    return point.overload_a is not None and (
        point.kind == STARTER or point.starter in {"", BUILT_IN}
    )


def relay_words(point: PointServed) -> str:
    """Return what a relay is set to: "Q4 3.5 A"."""
    return f"{point.tag} {point.overload_a:g} A"
