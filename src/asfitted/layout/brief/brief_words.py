"""The first pages of the route brief in words: order of work, what is live, zones, changes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.elevation.things_on_wall import IN_CABINET
from asfitted.layout.table import Column, Table
from asfitted.reference.heights import prescribed_zone_mm
from asfitted.reference.loader import table
from asfitted.resolve.starters import BUILT_IN, STARTER

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from asfitted.calculate.materials.items import Fixing
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable, PointServed

BOX = "☐"
FIXING_COLUMNS = (
    Column("Of"),
    Column("Where"),
    Column("What", least_mm=52.0),
    Column("Centres mm", align="end"),
    Column("No.", align="end", wraps=False),
    Column("Done", align="middle", wraps=False),
)
ORDER_COLUMNS = (
    Column("Step", align="middle", wraps=False),
    Column("What to do"),
    Column("Done", align="middle", wraps=False),
)


def caution_words(model: Model) -> str:
    """Return the cautions for the top of each page."""
    live = [b.tag for b in model.installation.boards.values() if b.state == "existing"]
    boards = f"{live_words(live)} until isolated, locked off and proved dead. " if live else ""
    return (
        f"{boards}Isolate, lock off and prove dead before opening anything. "
        "Scan before you drill. Not sure: stop and ask."
    )


def live_words(tags: Sequence[str]) -> str:
    """Return ``DB1 IS LIVE`` or ``DB1, DB2 ARE LIVE``."""
    return f"{', '.join(tags)} {'IS' if len(tags) == 1 else 'ARE'} LIVE"


def order_of_work(model: Model) -> Table:
    """Return the steps in order (common practice), each with the tags it is about."""
    rows = [(str(i), words, BOX) for i, words in enumerate(_steps(model), start=1)]
    return Table(ORDER_COLUMNS, tuple(rows), tuple(f"step {row[0]}" for row in rows))


def _steps(model: Model) -> Iterator[str]:
    job, off = model.installation, model.results.take_off
    yield "Read this brief with the person in charge; check the date and revision below."
    runs = [r.tag for r in job.containment.values() if r.state == "new"]
    removed = [
        thing.tag
        for group in (job.containment, job.points, job.boards, job.data_devices, job.cables)
        for thing in group.values()
        if thing.state == "removed"
    ]
    if removed:
        yield f"Prove dead, then take out: {', '.join(removed)}."
    yield "Mark out boards, points and runs on the walls; scan; agree clashes before drilling."
    if runs:
        yield f"Fix supports at the centres listed, then containment: {', '.join(runs)}."
    boards = [b.tag for b in job.boards.values() if b.state == "new"]
    things = [p.tag for p in job.points.values() if p.state == "new"]
    cabinet = [job.cabinet.tag] if job.cabinet is not None else []
    fixed = [*boards, *cabinet, *things]
    if fixed:
        yield f"Fix boards, boxes and accessories: {', '.join(fixed)}."
    data = [
        d.tag for d in job.data_devices.values() if d.state == "new" and d.kind not in IN_CABINET
    ]
    if data:
        yield f"Fix data devices, their cables to follow: {', '.join(data)}."
    armoured = {g.cable for g in off.glands} if off is not None else set()
    new = [c for c in job.cables.values() if c.state == "new"]
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
    yield "Gland and terminate at the loads first; clip and tie; close holes and seal walls."
    yield "Dead tests on each cable before any connection at a board."
    yield from _last_steps(model)


def _last_steps(model: Model) -> Iterator[str]:
    """Yield data devices, connection, and what a competent person does before it is used."""
    job = model.installation
    inside = [d.tag for d in job.data_devices.values() if d.state == "new" and d.kind in IN_CABINET]
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


def live_and_by_others(model: Model) -> tuple[str, ...]:
    """Return what is live, existing or by others, one sentence each."""
    job = model.installation
    found = []
    for board in job.boards.values():
        if board.state == "existing":
            ways = [
                c.way for c in job.circuits.values() if _is_existing(c.state, c.board, board.tag)
            ]
            kept = f"; ways {', '.join(ways)} stay in use" if ways else ""
            found.append(
                f"{live_words([board.tag])} until isolated, locked off and proved dead{kept}."
            )
    if job.supply is not None:
        found.append("Supply, meter and cut-out belong to others: do not open or cut a seal.")
    old = [c.tag for c in job.cables.values() if c.state == "existing"]
    if old:
        found.append(f"Existing cables: {', '.join(old)}. Where their way is not drawn, scan.")
    unknown = [c.tag for c in job.circuits.values() if c.state == "existing" and not c.cables]
    if unknown:
        found.append(f"Cables of {', '.join(unknown)} were not surveyed: they may be anywhere.")
    return tuple(found) or ("Nothing existing is recorded: that is no proof; scan and prove dead.",)


def _is_existing(state: str, board: str, tag: str) -> bool:
    return state == "existing" and board == tag


def zone_words() -> tuple[str, ...]:
    """Return where hidden cables may be looked for, and what may be cut of joists."""
    top = prescribed_zone_mm("top of wall").value
    corner = prescribed_zone_mm("vertical corner").value
    joists = {row["key"]: row["value"] for row in table("containment", "joist_holes").rows}
    share = float(joists["hole_max_fraction_of_depth"])
    notch = float(joists["notch_max_fraction_of_depth"])
    return (
        (
            "Hidden cables may run in these zones (BS 7671 522.6.202): "
            f"within {top:.0f} of the top of a wall, within {corner:.0f} of a corner where walls "
            "meet, and straight up, down and level from each point, board or box, on either face. "
            "Old cables may lie anywhere. Scan first; drill there only for the fixings listed, at "
            "marked places, with the circuit dead. Where a cable is hidden less than 50 deep it "
            "also needs an RCD of 30 mA or mechanical "
            "protection (522.6.203)."
        ),
        (
            f"Joists: holes on the centre line, at most {share:g} of the depth, between 25 % and "
            f"40 % of the span from an end, {joists['hole_spacing_min']} apart, cable at least "
            f"{joists['least_depth_from_top_or_bottom_mm']} from top and bottom. Notches at most "
            f"{notch:g} of the depth, between 7 % and 25 % of the span. Never both in one place, "
            "never in a truss or a made beam."
        ),
    )


def change_words(model: Model) -> tuple[str, ...]:
    """Return what changed since the last print."""
    changes = model.changes
    if changes is None:
        return (f"Revision {model.installation.job.revision}: first issue, nothing to compare.",)
    if not changes.changes:
        return (f"Nothing changed since revision {changes.old.revision}.",)
    lines = [f"Since revision {changes.old.revision} of {changes.old.date}:"]
    for change in changes.changes:
        effects = "; ".join(effect.words for effect in change.effects)
        lines.append(f"{change.words}" + (f" ({effects})" if effects else ""))
    return tuple(lines)


def fixing_table(model: Model) -> Table:
    """Return fixing centres and counts: supports piece by piece, clips and ties kind by kind."""
    off = model.results.take_off
    cables = model.installation.cables
    rows, idents = [], []
    for i, same in enumerate(_alike(off.fixings if off is not None else (), cables)):
        first = same[0]
        is_clip = _is_of_cables(first, cables)
        subject = "cables" if is_clip else first.subject
        where = _by_cable(same) if is_clip else _by_place(same)
        count = str(sum(f.count for f in same))
        rows.append((subject, where, first.what, str(first.spacing_mm), count, BOX))
        idents.append(f"{subject}/{i}")
    return Table(FIXING_COLUMNS, tuple(rows), tuple(idents))


def _is_of_cables(fixing: Fixing, cables: Mapping[str, Cable]) -> bool:
    """Tell whether a fixing holds cables, or the conduit that they lie in, and no run."""
    return fixing.subject.split()[0] in cables


def _by_place(same: Sequence[Fixing]) -> str:
    return "; ".join(dict.fromkeys(f"{f.where} {f.length_mm / 1000:g} m: {f.count}" for f in same))


def _by_cable(same: Sequence[Fixing]) -> str:
    counts: dict[str, int] = {}
    for fixing in same:
        counts[fixing.subject] = counts.get(fixing.subject, 0) + fixing.count
    return ", ".join(f"{tag}: {count}" for tag, count in counts.items())


def _alike(fixings: Sequence[Fixing], cables: Mapping[str, Cable]) -> list[list[Fixing]]:
    """Return the supports of one run together, and what holds cables by kind and spacing."""
    found: dict[tuple[str, str, int], list[Fixing]] = {}
    for one in fixings:
        subject = "" if _is_of_cables(one, cables) else one.subject
        key = (subject, one.what, one.spacing_mm)
        found.setdefault(key, []).append(one)
    return list(found.values())
