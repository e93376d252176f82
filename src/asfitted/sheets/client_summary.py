"""One page for the client: what there is, where it is switched off, what to do when it trips."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from asfitted.layout.document.blocks import Boxed, Bullets, Facts, Heading, Paragraph, Ruled
from asfitted.layout.document.own_levers import grouped, own_levers
from asfitted.layout.document.plain_words import (
    circuits_in_state,
    counted,
    head_boards,
    joined,
    or_not_recorded,
    place_words,
    recorded,
    sentence,
    some_of,
    wall_words,
)
from asfitted.layout.document.references import on_sheet, on_sheets
from asfitted.layout.document.wall_in_words import wall_known_by
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.layout.table import Column, Table
from asfitted.sheets._document_pages import build_document, plan_one_page

if TYPE_CHECKING:
    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan
    from asfitted.resolve.installation import Installation, Job, Position

ORDER = 2
LATE = 1
KEY = "client-summary"
READERS = ("client", "inspector")
CHART = "the chart in its door says what each way feeds."
BUTTON = "It is marked T or TEST, on each device that has one. If nothing trips, call."
MOST_NAMED = 14  # of one kind, named on the page; the charts name them all
MOST_LEVERS = 12  # of things with a lever of their own, a row each; more are told in groups
LEAST_WITH_TABLE = 3  # where less is named they are told in groups too
LEVER_COLUMNS = (Column("What stopped"), Column("Look first at"), Column("Then at"))
TO_WRITE = "Date of the certificate: ____________________   Next due: ____________________"
LEAST_CAMERAS = 4
LEAST_WITH_TEXT = 4  # where less is named the description of works has to do
CAUTIONS = (
    "Never hold or tape a lever up, nor take a cover off: parts behind it stay live.",
    "Water, damage, a smell of burning, a tingle from metal: switch off, keep away and call.",
    "This page is a help in use. It is not a certificate.",
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the one page; of a large job it names fewer things, with the count of the rest."""
    return plan_one_page(
        key=KEY,
        title="Summary for the client",
        section="Front",
        heading="In plain words: what you have",
        most=MOST_NAMED,
        blocks=partial(_blocks, model),
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - planned whole
    """Lay out the page."""
    return build_document(plan, numbers)


def _blocks(model: Model, most: int) -> list[Block]:
    job, installation = model.installation.job, model.installation
    was = "What was fitted" if job.status.startswith("As fitted") else "What is to be fitted"
    blocks: list[Block] = [_switch_off(installation, most), Heading(was)]
    if job.status.startswith("As fitted") and job.status != "As fitted":
        meant = "it has not been checked against what is there"
        blocks.append(Paragraph(f"The status of this issue is “{job.status}”: {meant}."))
    if recorded(job.description) and most >= LEAST_WITH_TEXT:
        blocks.append(Paragraph(sentence(job.description)))
    blocks += [
        Bullets(_fitted(model, most)),
        Heading("When something trips"),
        Bullets(_tripped(model)),
        *_levers(installation, most),
    ]
    blocks += [Heading("Who to call, and what is due"), Facts(_calls(job, model), 40.0)]
    left_out = _not_included(model, most)
    blocks += [Heading("What is not included"), Bullets(left_out)]
    return [*blocks, Heading("Take care"), Bullets(CAUTIONS)]


def _switch_off(installation: Installation, most: int) -> Boxed:
    boards = head_boards(installation)
    if not boards:
        cabinet = installation.cabinet
        where = f" The equipment is in {cabinet.tag}: " if cabinet else ""
        where += place_words(cabinet.position, installation) + "." if cabinet else ""
        lines = (
            "No board is part of this job: where the supply is switched off is not recorded.",
            f"{where.strip()} Unplug it there." if where else "",
        )
        return Boxed("To switch everything off", tuple(line for line in lines if line))
    told = tuple(
        f"{board.tag}: {_found_at(board.position, installation)}. "
        f"Turn the main switch to OFF"
        f"{f' (marked {board.main_switch.rating_a:g} A)' if board.main_switch else ''}."
        for board in boards[:most]
    )
    if len(boards) > most:
        told = (*told, f"{len(boards) - most} more: see the charts of the boards.")
    live = "The meter and the wires before the main switch stay live."
    return Boxed("To switch everything off: the main switch", (*told, live))


def _found_at(position: Position, installation: Installation) -> str:
    """Return where a thing is, its wall by its letter and by what is seen there."""
    where, wall = place_words(position, installation), wall_words(position, installation)
    known_by = wall_known_by(position, installation)
    return where.replace(wall, f"{wall} ({known_by})", 1) if known_by else where


def _fitted(model: Model, most: int) -> tuple[str, ...]:
    installation = model.installation
    entries = []
    new = circuits_in_state(installation, "new")
    names = [circuit.name for circuit in new]
    if names:
        entries.append(f"{counted(len(names), 'new circuit')}: {some_of(names, most)}.")
    boards = [b for b in installation.boards.values() if b.state == "new"]
    if boards:
        places = [f"{b.tag} ({place_words(b.position, installation)})" for b in boards]
        entries.append(f"{counted(len(boards), 'new board')}: {some_of(places, min(4, most))}.")
    entries += _data(installation, most)
    entries += _references(model)
    return tuple(entries)


def _data(installation: Installation, most: int) -> list[str]:
    devices = [d for d in installation.data_devices.values() if d.state != "removed"]
    cameras = [d for d in devices if d.kind == "camera"]
    entries = []
    if cameras:
        views = some_of([f"{d.tag} {d.views}".strip() for d in cameras], max(most, LEAST_CAMERAS))
        entries.append(f"{counted(len(cameras), 'camera')}: {views}.")
    places = [d for d in devices if d.kind in {"data outlet", "access point"}]
    if places:
        named = [f"{d.tag} ({d.kind})" for d in places]
        entries.append(f"{counted(len(places), 'network point')}: {some_of(named, most)}.")
    return entries


def _references(model: Model) -> list[str]:
    """Return where the pictures of it are."""
    found = []
    plan_of_rooms, charts = on_sheet(model, "key-plan"), on_sheets(model, "door-chart")
    if plan_of_rooms:
        found.append(f"plan of the rooms on {plan_of_rooms}")
    if charts:
        found.append(f"chart of each board on {charts}")
    return [sentence(f"see the {joined(found)}")] if found else []


def _tripped(model: Model) -> tuple[str, ...]:
    if not model.installation.boards:
        return (
            "No protective device is part of this job: look at the board that feeds it, or call.",
        )
    return (
        "Switch off or unplug what was used last; leave anything wet or damaged alone.",
        f"At the board, find the lever that is down; {CHART}",
        "Push that lever fully down, then up. If it trips again, leave it down and call.",
    )


def _levers(installation: Installation, most: int) -> list[Block]:
    """Return what has a lever elsewhere than in the board that its chart is in."""
    levers = own_levers(installation)
    if not levers:
        return []
    leads = Paragraph("These are looked for in two places:", leads=True)
    if len(levers) > MOST_LEVERS or most < LEAST_WITH_TABLE:
        return [leads, Bullets(grouped(levers))]
    rows = tuple((lever.what, lever.first, lever.then) for lever in levers)
    idents = tuple(lever.tag for lever in levers)
    return [leads, Ruled("levers", Table(LEVER_COLUMNS, rows, idents))]


def _calls(job: Job, model: Model) -> tuple[tuple[str, str], ...]:
    facts = model.installation.handover
    who = f"{job.installer}, {job.phone}" if recorded(job.phone) else job.installer
    rows: list[tuple[str, str]] = [("Call", facts.in_trouble_call or who)]
    if not recorded(job.phone) and not facts.in_trouble_call:
        rows[0] = ("Call", f"{job.installer}; telephone number {NOT_RECORDED}")
    if model.installation.boards:
        every = facts.rcd_test or "every six months (usual; nothing else is recorded)"
        rows.append(
            (
                "Press the test button",
                f"{every}. {BUTTON}",
            )
        )
    rows.append(("Next inspection", or_not_recorded(facts.next_inspection)))
    rows.append(("Write here", TO_WRITE))
    return tuple(rows)


def _not_included(model: Model, most: int) -> tuple[str, ...]:
    given = model.installation.handover.not_included
    entries = [sentence(words) for words in given[:most]]
    if len(given) > most:
        left = len(given) - most
        entries.append(f"{left} more: the description of works, in the full set, has them.")
    if not entries:
        entries.append("Beyond what is listed above: not recorded.")
    old = circuits_in_state(model.installation, "existing")
    if old:
        names = some_of([circuit.name for circuit in old], min(6, most))
        entries.append(f"Older circuits, shown but neither changed nor surveyed here: {names}.")
    return tuple(entries)
