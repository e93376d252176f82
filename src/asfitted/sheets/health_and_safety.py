"""Input to a health and safety file: what is left that can hurt whoever works here later."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.document.blocks import Bullets, Heading, Paragraph, Ruled
from asfitted.layout.document.plain_words import (
    circuits_in_state,
    head_boards,
    place_words,
    recorded,
    sentence,
    some_of,
)
from asfitted.layout.document.references import on_sheet
from asfitted.layout.figures import metres
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.layout.sheet_layout import READERS as EVERY_READER
from asfitted.layout.table import Column, Table
from asfitted.sheets._document_pages import build_document, plan_document

if TYPE_CHECKING:
    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan
    from asfitted.resolve.installation import Installation

ORDER = 116
LATE = 2
KEY = "health-and-safety"
HIGH_MM = 2500.0  # above this a step-ladder or better is needed (common practice)
COLUMNS = (
    Column("Hazard that is left", least_mm=40.0),
    Column("Where"),
    Column("What to do about it"),
)
Hazard = tuple[str, str, str]
INTRO = (
    "Facts for the health and safety file that the Construction (Design and Management) "
    "Regulations 2015 ask for where more than one contractor works on a project; of use to anyone "
    "who works here later. It is input, not the file itself."
)
ASBESTOS = (
    "Asbestos, lead",
    "the building",
    "Nothing is recorded here: ask the duty-holder for the asbestos register before any hole.",
)
TAKING_OUT = (
    "Taking it out again: isolate and prove dead at the board; then loads, cables, containment.",
    "Seal the holes that are left in fire-rated walls and floors.",
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the pages."""
    return plan_document(
        key=KEY,
        title="Health and safety file input",
        section="Handover",
        blocks=_blocks(model),
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - planned whole
    """Lay out one page."""
    return build_document(plan, numbers)


def _blocks(model: Model) -> list[Block]:
    installation = model.installation
    job = installation.job
    described = sentence(job.description) if recorded(job.description) else f"{NOT_RECORDED}."
    hazards = tuple(_hazards(installation))
    idents = tuple(f"{i:03d}" for i in range(len(hazards)))
    blocks: list[Block] = [
        Paragraph(INTRO),
        Heading("The work"),
        Paragraph(f"{job.title}, {job.site}: {described}"),
        Heading("Hazards that are left"),
        Ruled("hazards", Table(COLUMNS, hazards, idents)),
        Heading("Services: where they run and how they are marked"),
        Bullets(_services(model)),
        Heading("Changing, cleaning, taking out"),
        Bullets(TAKING_OUT),
    ]
    return blocks


def _hazards(installation: Installation) -> list[Hazard]:
    found = [
        ("Recorded for this site", "on this site", sentence(w))
        for w in installation.handover.hazards
    ]
    found += _live(installation)
    found += _hidden(installation)
    found += _high(installation)
    return [*found, ASBESTOS]


def _live(installation: Installation) -> list[Hazard]:
    """Return what stays or becomes live though a switch is off."""
    found: list[Hazard] = []
    heads = head_boards(installation)
    for board in heads:
        where = f"{board.tag}: {place_words(board.position, installation)}"
        what = "Supply side of the main switch stays live"
        found.append((what, where, "Only the distributor makes it dead; keep its covers on."))
    if len(heads) > 1:
        tags = some_of([board.tag for board in heads], 8)
        words = "Switching one off leaves the others live: isolate each, prove dead."
        found.append(("More than one incoming supply", tags, words))
    old = circuits_in_state(installation, "existing")
    if old:
        tags = some_of([circuit.tag for circuit in old], 12)
        words = "Fed and routed by others, not surveyed: trace and prove dead before touching."
        found.append(("Older circuits, live in the same boards", tags, words))
    states = {
        tag: {c.state for c in installation.circuits.values() if c.board == tag}
        for tag in installation.boards
    }
    mixed = [tag for tag, found_there in states.items() if {"existing", "new"} <= found_there]
    if mixed:
        words = "Black may be a line or a neutral: identify, never go by colour alone."
        found.append(("Old and new conductor colours may be together", some_of(mixed, 12), words))
    return found


def _hidden(installation: Installation) -> list[Hazard]:
    """Return cables that nobody sees: buried and hidden runs, holes through the building."""
    found: list[Hazard] = []
    for run in installation.containment.values():
        if run.declared_length_m is None or run.state == "removed":
            continue
        buried = "buried" in run.kind
        depth = "" if run.depth_mm or not buried else f", depth {NOT_RECORDED}"
        where = (
            f"{run.tag}: {run.words}{depth}, {metres(run.declared_length_m)}, to {run.end_words}"
        )
        what = "Buried cables" if buried else "Cables out of sight"
        words = "Find it with a locator before digging." if buried else "Do not drill into it."
        found.append((what, where, words))
    places = [p.tag for p in installation.passages.values()]
    if places:
        words = "Seal again, to its rating, whatever is opened."
        found.append(("Cables through walls and floors", some_of(places, 12), words))
    return found


def _high(installation: Installation) -> list[Hazard]:
    """Return what can only be reached from steps, a tower or a platform."""
    things = [
        (tag, thing.position)
        for group in (installation.points, installation.data_devices, installation.boards)
        for tag, thing in group.items()
        if thing.state != "removed" and thing.position.up_mm > HIGH_MM
    ]
    runs = [
        run.tag
        for run in installation.containment.values()
        if run.state != "removed" and any(p.z > HIGH_MM for p in run.path)
    ]
    found: list[Hazard] = []
    if things:
        top = max(position.up_mm for _, position in things) / 1000
        where = f"{some_of([tag for tag, _ in things], 14)}; highest at {metres(top)}"
        words = "Tower or platform for work, not a ladder; nobody below; isolate first."
        found.append(("Work at height", where, words))
    if runs:
        words = "Tower or platform; nobody stands on trays or hangs things from them."
        found.append(("Containment at height", some_of(runs, 14), words))
    return found


def _services(model: Model) -> tuple[str, ...]:
    entries = []
    for words, name in (
        ("Plan of rooms and runs", "key-plan"),
        ("Walls, with heights and routes", "elevation"),
        ("Cables by tag", "cable-schedule"),
        ("Isolation of each item", "operation-and-maintenance"),
    ):
        reference = on_sheet(model, name, readers=EVERY_READER)
        if reference:
            entries.append(f"{words}: {reference}.")
    entries.append("As designed, cables carry their tag at both ends and ways a name.")
    return tuple(entries)
